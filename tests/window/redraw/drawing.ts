import { expect } from "@playwright/test";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import { terminalSpots } from "../../../core/circuit/placeSymbol.ts";
import type { Spot } from "../../../core/drawing/mark.ts";
import { firstTurn } from "../../../core/edit/newPart.ts";
import { tableWritten } from "../../../core/edit/tableText.ts";
import { kindOf } from "../../../core/parts/catalogue.ts";
import type { Hands } from "./hands.ts";
import {
  clearOfOthers,
  firstTable,
  middleOf,
  middleOfNew,
  partsByKind,
  splicedAside,
  type WireToDraw,
} from "./parts.ts";

/** Words by which a kind is found in the catalogue, where its name is not one. */
export const WORDS: Readonly<Record<string, string>> = { "ignition-switch": "ignition", connector: "in-line" };
/** The page that a new circuit has. */
const PAGE = "p1";

/** Brings the printed page of a file in, under the drawing of the page in sight, and makes it pale. */
export async function bringIn(hands: Hands, file: string): Promise<void> {
  const { page } = hands;
  await hands.button("More views");
  await hands.button("Printed pages");
  const [field] = await Promise.all([page.waitForEvent("filechooser"), hands.button("Bring in printed pages")]);
  await field.setFiles(file);
  await hands.button("Bring in 1 page");
  await expect(page.getByText(/^Under the drawing of /)).toBeVisible();
}

/** Two grounds, taken back again, show where the paper lies on the screen. */
export async function findThePaper(hands: Hands): Promise<void> {
  const { x, y, width, height } = (await hands.page.getByRole("application").boundingBox())!;
  const pixels = [0.25, 0.75].map((share) => ({ x: x + share * width, y: y + share * height }));
  hands.look(pixels, pixels);
  await takeKind(hands, "ground");
  for (const pixel of pixels) await hands.click(pixel);
  const { placement } = await hands.circuit();
  hands.look(
    Object.values(placement.parts).map((place) => middleOfNew("ground", place)),
    pixels,
  );
  await hands.key("Control+z", 2);
}

/**
 * Places the parts of a circuit where they stand in it, kind by kind in the order of their designators, so that each gets
 * the one it has in print. Gives back how those that do not are called now.
 */
export async function placeParts(
  hands: Hands,
  wanted: Circuit,
  ids: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const byKind = partsByKind(wanted, ids);
  const clicked: Spot[] = [];
  for (const [kind, those] of byKind) {
    await takeKind(hands, kind);
    let turned: number = firstTurn(kindOf(kind)!);
    let flipped = false;
    for (const id of those) {
      const place = wanted.placement.parts[id]!;
      const { turn = 0, flip = false } = place;
      await hands.key("t", ((turn - turned + 360) % 360) / 90);
      if (flip !== flipped) await hands.key("m");
      [turned, flipped] = [turn, flip];
      const middle = middleOfNew(kind, place);
      clicked.push(hands.pixelOf(middle));
      await hands.click(middle);
    }
  }
  await hands.key("Escape");
  const placed = await hands.circuit();
  const now = partsByKind(
    placed,
    placed.parts.map(({ id }) => id),
  );
  const names = new Map(
    [...byKind].flatMap(([kind, those]) => those.map((id, index) => [id, now.get(kind)![index]!] as const)),
  );
  // What was clicked by the rough first look is now known to the last pixel.
  hands.look(
    [...names.values()].map((id) => middleOf(placed, id)),
    clicked,
  );
  return names;
}

/** Writes the tables of switches that are not as the catalogue has them. */
export async function writeTables(hands: Hands, wanted: Circuit, ids: readonly string[]): Promise<void> {
  for (const part of wanted.parts) {
    if (!ids.includes(part.id) || tableWritten(part) === firstTable(part.kind)) continue;
    await find(hands, part.id);
    await hands.button("Edit");
    await hands.unfold("Write it as text");
    await expect(hands.page.getByRole("textbox", { name: /^One control a line/ })).toBeFocused();
    await hands.word(tableWritten(part));
    await hands.key("Control+Enter");
    await hands.button("Done");
  }
}

/** Copies a part to where others like it stand. */
export async function copyTo(hands: Hands, wanted: Circuit, from: string, ids: readonly string[]): Promise<void> {
  await find(hands, from);
  await hands.key("Control+c");
  for (const id of ids) {
    await hands.point(wanted.placement.parts[id]!);
    await hands.key("Control+v");
  }
}

/** Draws wires from terminal to terminal and writes their colours. Those of a splice end on the first of them. */
export async function drawWires(
  hands: Hands,
  wires: readonly WireToDraw[],
  names: ReadonlyMap<string, string>,
): Promise<void> {
  const spots = terminalSpots(await hands.circuit(), PAGE);
  const spotOf = (point: string): Spot => {
    const [, part = "", rest = ""] = /^([A-Z]+\d+)(.+)$/.exec(point) ?? [];
    const spot = spots.get(`${names.get(part) ?? part}${rest}` as Parameters<typeof spots.get>[0]);
    if (!spot) throw new Error(`${point} is not on the page`);
    return spot;
  };
  const draw = async (from: Spot, to: Spot, colour: string): Promise<void> => {
    await hands.click(from);
    await hands.click(to);
    await expect(hands.page.getByRole("group", { name: /^Wire / }).getByLabel("Colour")).toBeFocused();
    await hands.word(colour);
  };
  const { plain, spliced } = splicedAside(wires);
  await hands.key("l");
  for (const { from, to, colour } of plain) await draw(spotOf(from), spotOf(to), colour);
  for (const [trunk, ...legs] of spliced) {
    await draw(spotOf(trunk!.from), spotOf(trunk!.to), trunk!.colour);
    const meeting = clearOfOthers(await hands.circuit(), PAGE);
    for (const leg of legs) await draw(spotOf(leg.to), meeting, leg.colour);
  }
  await hands.key("Escape", 2);
}

async function takeKind(hands: Hands, kind: string): Promise<void> {
  await hands.button("Add a part");
  await hands.word(WORDS[kind] ?? kind);
  await hands.key("Enter");
}

/** Finds something by its name and goes there. */
export async function find(hands: Hands, id: string): Promise<void> {
  await hands.key("Control+f");
  await hands.word(id);
  await hands.key("Enter");
}
