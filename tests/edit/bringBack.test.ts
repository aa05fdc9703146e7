import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { bringBack } from "../../core/edit/commands/bringBack.ts";
import { changeLength } from "../../core/edit/commands/changeLength.ts";
import { changeTitle } from "../../core/edit/commands/changeTitle.ts";
import { removeThings } from "../../core/edit/commands/removeThings.ts";
import { retitlePage } from "../../core/edit/commands/retitlePage.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { apply } from "../../core/edit/edit.ts";
import { formatCircuit } from "../../schemas/formatCircuit.ts";
import { after, codeOf, got, VENTS } from "./given.ts";

const EDITS: readonly (readonly [string, (bench: ReturnType<typeof benchFor>) => ReturnType<typeof changeTitle>])[] = [
  ["a title", (bench) => changeTitle(bench, "Vents")],
  ["a page's title", (bench) => retitlePage(bench, "p2", "Vents")],
  ["a wire's length", (bench) => changeLength(bench, "W13", "4")],
  ["a part with its wires", (bench) => removeThings(bench, ["S5"])],
  ["half of the circuit", (bench) => removeThings(bench, ["S2", "S4", "M4", "W13"])],
];

describe("an earlier version", () => {
  test.each(EDITS)("comes back byte by byte after %s was changed, and goes again when undone", (_, edit) => {
    const now = after(benchFor(VENTS), edit(benchFor(VENTS)));
    expect(formatCircuit(now.circuit)).not.toBe(formatCircuit(VENTS));
    const back = got(apply(now, got(bringBack(now, VENTS, "bring back"))));
    expect(formatCircuit(back.bench.circuit)).toBe(formatCircuit(VENTS));
    const undone = got(apply(back.bench, back.inverse)).bench;
    expect(formatCircuit(undone.circuit)).toBe(formatCircuit(now.circuit));
    expect(undone.condition).toEqual(now.condition);
  });

  test("that is the same is no edit", () => {
    expect(codeOf(bringBack(benchFor(VENTS), structuredClone(VENTS), "bring back"))).toBe("already-so");
  });

  test("without a switch that is set puts all at rest, with it the condition stays", () => {
    const set = after(benchFor(VENTS), setUp(benchFor(VENTS), { set: { S1: "on", S5: "open" } }));
    const fewer = after(benchFor(VENTS), removeThings(benchFor(VENTS), ["S5"])).circuit;
    expect(after(set, bringBack(set, fewer, "")).condition).toEqual({});
    const other: Circuit = { ...VENTS, title: "Vents" };
    expect(after(set, bringBack(set, other, "")).condition).toEqual(set.condition);
  });

  test("leaves out faults and observations of what it does not have", () => {
    const check = VENTS.checks.find(({ condition }) => condition.set?.S5 !== undefined)!;
    const bench = {
      ...benchFor(VENTS),
      faults: [{ target: "W13", mode: "open" }],
      observed: { [check.id]: "dead" as const },
      complaint: check.id,
    };
    const fewer = after(benchFor(VENTS), removeThings(benchFor(VENTS), ["W13", "S5"])).circuit;
    expect(after(bench, bringBack(bench, fewer, ""))).toMatchObject({ faults: [], observed: {}, complaint: null });
  });
});
