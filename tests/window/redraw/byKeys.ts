import { expect } from "@playwright/test";
import type { Circuit, PartPlace } from "../../../core/circuit/circuit.ts";
import { firstTurn } from "../../../core/edit/newPart.ts";
import { kindOf } from "../../../core/parts/catalogue.ts";
import { find, WORDS } from "./drawing.ts";
import type { KeyHands } from "./keyHands.ts";
import { partsByKind, splicedAside, type WireToDraw } from "./parts.ts";

/** Places the parts of a circuit where they stand in it, by what is told of where the part in hand would stand. */
export async function placeByKeys(
  hands: KeyHands,
  wanted: Circuit,
  ids: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const byKind = partsByKind(wanted, ids);
  for (const [kind, those] of byKind) {
    await hands.key("c");
    await expect(hands.page.getByRole("searchbox", { name: /Find a part by/ })).toBeFocused();
    await hands.word(WORDS[kind] ?? kind);
    await hands.key("Enter");
    let turned: number = firstTurn(kindOf(kind)!);
    for (const id of those) {
      const place = wanted.placement.parts[id]!;
      const { turn = 0 } = place;
      await hands.key("t", ((turn - turned + 360) % 360) / 90);
      turned = turn;
      await hands.key("ArrowRight");
      await goTo(hands, place);
      await hands.key("Enter");
    }
    await hands.key("Escape");
  }
  const placed = await hands.circuit();
  const now = partsByKind(
    placed,
    placed.parts.map(({ id }) => id),
  );
  return new Map([...byKind].flatMap(([kind, those]) => those.map((id, at) => [id, now.get(kind)![at]!] as const)));
}

/** With the part in hand to a place, from where it is told to be. */
async function goTo(hands: KeyHands, { x, y }: PartPlace): Promise<void> {
  const [, right, down] = /^At (-?\d+), (-?\d+)/.exec(await hands.told()) ?? [];
  await hands.steps(x - Number(right), y - Number(down));
  expect(await hands.told()).toMatch(new RegExp(`^At ${x}, ${y}\\b`));
}

/** Copies a part, and moves each copy to where another like it stands. */
export async function copyByKeys(
  hands: KeyHands,
  wanted: Circuit,
  from: string,
  ids: readonly string[],
): Promise<void> {
  await find(hands, from);
  await hands.key("Control+c");
  for (const id of ids) {
    await hands.key("Control+v");
    const { placement } = await hands.circuit();
    const { x, y } = placement.parts[id]!;
    const goal = wanted.placement.parts[id]!;
    await hands.steps(goal.x - x, goal.y - y);
    expect((await hands.circuit()).placement.parts[id]).toMatchObject({ x: goal.x, y: goal.y });
  }
}

/** Draws wires from terminal to terminal, each found by its name, and writes their colours. */
export async function wireByKeys(
  hands: KeyHands,
  wires: readonly WireToDraw[],
  names: ReadonlyMap<string, string>,
): Promise<void> {
  const nameOf = (point: string): string => {
    const [, part = "", rest = ""] = /^([A-Z]+\d+)(.+)$/.exec(point) ?? [];
    return `${names.get(part) ?? part}${rest}`;
  };
  const draw = async (from: string, to: string, colour: string): Promise<void> => {
    for (const end of [from, to]) {
      await find(hands, end);
      await hands.key("Enter");
    }
    await expect(hands.page.getByRole("group", { name: /^Wire / }).getByLabel("Colour")).toBeFocused();
    await hands.word(colour);
  };
  const { plain, spliced } = splicedAside(wires);
  await hands.key("l");
  for (const { from, to, colour } of plain) await draw(nameOf(from), nameOf(to), colour);
  for (const [trunk, ...legs] of spliced) {
    await draw(nameOf(trunk!.from), nameOf(trunk!.to), trunk!.colour);
    // The first leg meets the wire that was drawn last; the others the splice that comes of it.
    const last = (await hands.circuit()).wires.at(-1)!.id;
    for (const [at, leg] of legs.entries()) {
      const splice = (await hands.circuit()).parts.findLast(({ kind }) => kind === "splice");
      await draw(nameOf(leg.to), at === 0 ? last : splice!.id, leg.colour);
    }
  }
  await hands.key("Escape", 2);
}
