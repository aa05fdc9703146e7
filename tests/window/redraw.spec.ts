import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { copyByKeys, placeByKeys, wireByKeys } from "./redraw/byKeys.ts";
import { bringIn, copyTo, drawWires, findThePaper, placeParts, writeTables } from "./redraw/drawing.ts";
import { Hands } from "./redraw/hands.ts";
import { KeyHands } from "./redraw/keyHands.ts";
import { wiresToDraw } from "./redraw/parts.ts";
import { netsThatDiffer, settingsOf, statesThatDiffer } from "./redraw/same.ts";
import { overPrint, printedPage, roofVents } from "./redraw/target.ts";
import { expect, story } from "./story.ts";

/** What a technician should need at most for a branch of 25 parts and 44 wires. */
const MOST_ACTIONS = 250;
/** The same by keys alone, every press of Tab and of an arrow counted. */
const MOST_KEYS = 950;
/** The paper that the circuit is printed on: as large as a new page, so that the print lies under the drawing as it is. */
const PAPER = "a3";
/** Switches that are like another one, and are copied from it; the splice comes by itself. */
const COPIED = ["S4", "S5", "S6"];
const ASIDE = [...COPIED, "SP1"];

story(
  "a circuit is redrawn from its printed page with the mouse, and is electrically the same",
  async ({ program }) => {
    story.setTimeout(120_000);
    await program.page.setViewportSize({ width: 1920, height: 1080 });
    const circuit = roofVents();
    const wanted = overPrint(circuit, PAPER);
    const print = join(program.folder, "roof vents.pdf");
    writeFileSync(print, await printedPage(circuit, PAPER));
    const hands = new Hands(program);
    const began = performance.now();
    await hands.button("New circuit");
    await bringIn(hands, print);
    await findThePaper(hands);
    const ids = wanted.parts.flatMap(({ id }) => (ASIDE.includes(id) ? [] : [id]));
    const names = await placeParts(hands, wanted, ids);
    await writeTables(hands, wanted, ids);
    await copyTo(hands, wanted, "S3", COPIED);
    await drawWires(hands, wiresToDraw(wanted), names);

    const drawn = await hands.circuit();
    const seconds = Math.round((performance.now() - began) / 1000);
    console.log(
      `redrawn: ${drawn.parts.length} parts, ${drawn.wires.length} wires, ${hands.actions} actions, ${seconds} s`,
    );
    expect(netsThatDiffer(wanted, drawn)).toEqual([]);
    expect(statesThatDiffer(wanted, drawn, settingsOf(wanted))).toEqual([]);
    expect(hands.actions).toBeLessThanOrEqual(MOST_ACTIONS);
  },
);

story("the same is redrawn by the keyboard alone", async ({ program, host }) => {
  // Nine hundred presses take a minute and more; the page is the same in both hosts.
  story.skip(host !== "loopback", "told once is enough");
  story.setTimeout(360_000);
  await program.page.setViewportSize({ width: 1920, height: 1080 });
  const circuit = roofVents();
  const wanted = overPrint(circuit, PAPER);
  const print = join(program.folder, "roof vents.pdf");
  writeFileSync(print, await printedPage(circuit, PAPER));
  const hands = new KeyHands(program);
  const began = performance.now();
  await hands.button("New circuit");
  await bringIn(hands, print);
  await hands.toDrawing();
  const ids = wanted.parts.flatMap(({ id }) => (ASIDE.includes(id) ? [] : [id]));
  const names = await placeByKeys(hands, wanted, ids);
  await writeTables(hands, wanted, ids);
  await copyByKeys(hands, wanted, "S3", COPIED);
  await wireByKeys(hands, wiresToDraw(wanted), names);

  const drawn = await hands.circuit();
  const seconds = Math.round((performance.now() - began) / 1000);
  console.log(
    `redrawn by keys: ${drawn.parts.length} parts, ${drawn.wires.length} wires, ${hands.actions} actions, ${seconds} s`,
  );
  expect(netsThatDiffer(wanted, drawn)).toEqual([]);
  expect(statesThatDiffer(wanted, drawn, settingsOf(wanted))).toEqual([]);
  expect(hands.actions).toBeLessThanOrEqual(MOST_KEYS);
});
