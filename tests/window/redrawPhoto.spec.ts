import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { emptyCircuit } from "../../core/circuit/emptyCircuit.ts";
import { fitted } from "../../core/circuit/underlays.ts";
import type { Spot } from "../../core/drawing/mark.ts";
import { gridUnitsOf, millimetresOf } from "../../core/drawing/scale.ts";
import { photographed } from "./photographed.ts";
import { coverOf, darknessOf, paintedPaper, wayApart } from "./redraw/apart.ts";
import { bringIn, drawWires, placeParts } from "./redraw/drawing.ts";
import { DOTS, flatSheet } from "./redraw/flatSheet.ts";
import { Hands } from "./redraw/hands.ts";
import { middleOf, wiresToDraw } from "./redraw/parts.ts";
import { netsThatDiffer } from "./redraw/same.ts";
import { hornSheet, horns, overPrint, paperOnPage, printedPage, spotInPrint } from "./redraw/target.ts";
import { dragOntoPaper, handlesAt } from "./squaring.ts";
import { expect, story } from "./story.ts";

const PAPER = "a4";
/** How far from its place on the flat sheet the photograph may show a spot, and a part may stand from its picture, mm. */
const NEAR = { spot: 2.5, part: 4 } as const;
/** Share of the drawing's window that the paper of the photograph covers at least, and how much of that ink may be. */
const [PAPER_IN_SIGHT, MOST_INK] = [0.25, 0.2];
/** Splices come by themselves where a wire ends on another. */
const SPLICES = ["SP1", "SP2"];

story("a branch is redrawn over a photograph of a printed sheet, made square and white", async ({ program, host }) => {
  story.skip(host !== "loopback", "the page is the same in both hosts, and bringing a photograph in is told in both");
  const { page } = program;
  await page.setViewportSize({ width: 1920, height: 1080 });
  const sheet = hornSheet();
  const flat = await flatSheet(await printedPage(sheet, PAPER));
  const photo = photographed(flat, { fine: 1.5, noise: 12, quality: 75 });
  const file = join(program.folder, "horns.jpg");
  writeFileSync(file, photo.jpeg);
  const wanted = overPrint(horns(), PAPER);

  const hands = new Hands(program);
  await hands.button("New circuit");
  await bringIn(hands, file);
  await hands.button("Make square");
  // As it is taken up it fills the page: where that lies on the screen is seen by its handles.
  const sight = new Hands(program);
  const [whole] = emptyCircuit("").pages;
  const spots = fitted(whole!, photo.width, photo.height).map(([x, y]) => ({ x: gridUnitsOf(x), y: gridUnitsOf(y) }));
  const pixels = (await handlesAt(page)).map(([x, y]) => ({ x, y }));
  for (const each of [hands, sight]) each.look(spots, pixels);
  await dragOntoPaper(page, photo);
  await page.getByLabel("The paper is").selectOption("A4");
  await hands.button("Take it (Enter)");
  const covered = async (): Promise<number> => coverOf(await paintedPaper(page));
  await expect.poll(covered).toBeGreaterThan(PAPER_IN_SIGHT);
  await page.getByText("White paper").click();
  await expect.poll(covered).toBeLessThan(PAPER_IN_SIGHT * MOST_INK);
  const ids = wanted.parts.flatMap(({ id }) => (SPLICES.includes(id) ? [] : [id]));
  const names = await placeParts(hands, wanted, ids);

  const onPaper = paperOnPage(sheet.pages[0]!, PAPER);
  const flatInk = darknessOf(flat, ({ x, y }) => ({ x: (x - onPaper.x) * DOTS, y: (y - onPaper.y) * DOTS }));
  const box = (await page.locator(".sheet-layers canvas").first().boundingBox())!;
  const inkInSight = darknessOf(await paintedPaper(page), ({ x, y }) => {
    const pixel = sight.pixelOf({ x: gridUnitsOf(x), y: gridUnitsOf(y) });
    return { x: pixel.x - box.x, y: pixel.y - box.y };
  });
  const placed = await hands.circuit();
  const found = ids.map((id) => {
    const { dx, dy } = wayApart(flatInk, inkInSight, shownAt(middleOf(sheet, id)));
    // By their top left: a new joint has one pin more than the printed one.
    const [shown, drawn] = [shownAt(sheet.placement.parts[id]!), placed.placement.parts[names.get(id)!]!];
    const [right, down] = [millimetresOf(drawn.x) - shown.x - dx, millimetresOf(drawn.y) - shown.y - dy];
    return { spot: Math.hypot(dx, dy), part: Math.hypot(right, down) };
  });
  const most = (which: "spot" | "part"): number => Math.max(...found.map((each) => each[which]));
  console.log(
    `photograph: spots lie ${most("spot").toFixed(2)} mm from the flat sheet at most, parts ${most("part").toFixed(2)} mm from their picture`,
  );
  expect(most("spot")).toBeLessThanOrEqual(NEAR.spot);
  expect(most("part")).toBeLessThanOrEqual(NEAR.part);

  await drawWires(hands, wiresToDraw(wanted), names);
  expect(netsThatDiffer(wanted, await hands.circuit())).toEqual([]);
});

/** Where the flat sheet shows a spot of its circuit, millimetres of the new page. */
function shownAt(spot: Spot): Spot {
  const { x, y } = spotInPrint(hornSheet(), PAPER, spot);
  return { x: millimetresOf(x), y: millimetresOf(y) };
}
