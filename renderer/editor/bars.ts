/** A bar between two columns of a row: level 0 runs straight between neighbours, higher ones pass below what lies between. */
export interface Bar {
  readonly from: number;
  readonly to: number;
  readonly level: number;
}

/**
 * The bars of one row of the printed chart: from each terminal of a group to the next of it. Columns count from 0; bars that
 * pass below others that they would run into lie one level deeper.
 */
export function barsOf(groups: readonly (readonly string[])[], columns: readonly string[]): readonly Bar[] {
  const spans = groups.flatMap((group) => {
    const at = group.map((terminal) => columns.indexOf(terminal)).sort((one, other) => one - other);
    return at.slice(1).map((to, index) => ({ from: at[index]!, to }));
  });
  const bars: Bar[] = [];
  for (const span of spans.sort((one, other) => one.to - one.from - (other.to - other.from))) {
    let level = span.to - span.from > 1 ? 1 : 0;
    while (level > 0 && bars.some((bar) => bar.level === level && bar.from < span.to && span.from < bar.to)) level++;
    bars.push({ ...span, level });
  }
  return bars;
}

/** How many levels lie below a row. */
export function depthOf(bars: readonly Bar[]): number {
  return Math.max(0, ...bars.map(({ level }) => level));
}
