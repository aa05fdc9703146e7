/** Tiles nearer in height than this stand in one row, pixels. */
const ROW = 8;

/**
 * The tile that an arrow key goes to from the one that has the focus: its neighbour in the row, or the nearest one in the
 * next row up or down, whatever the tiles' widths. Null for other keys and at the ends.
 */
export function tileToward(tiles: readonly HTMLElement[], from: Element | null, key: string): HTMLElement | null {
  const at = tiles.indexOf(from as HTMLElement);
  if (at < 0) return null;
  if (key === "ArrowRight") return tiles[at + 1] ?? null;
  if (key === "ArrowLeft") return tiles[at - 1] ?? null;
  if (key !== "ArrowDown" && key !== "ArrowUp") return null;
  const way = key === "ArrowDown" ? 1 : -1;
  const here = tiles[at]!.getBoundingClientRect();
  const beyond = tiles
    .map((tile) => ({ tile, box: tile.getBoundingClientRect() }))
    .filter(({ box }) => (box.top - here.top) * way > ROW);
  const nearest = Math.min(...beyond.map(({ box }) => (box.top - here.top) * way));
  const row = beyond.filter(({ box }) => (box.top - here.top) * way - nearest < ROW);
  const aside = ({ box }: (typeof row)[number]): number =>
    Math.abs(box.left + box.width / 2 - here.left - here.width / 2);
  return row.sort((one, other) => aside(one) - aside(other))[0]?.tile ?? null;
}
