import { describe, expect, it } from "vitest";
import type { Outcome } from "../../core/base/outcome.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { clipLead } from "../../core/edit/commands/clipLead.ts";
import { layInstrument } from "../../core/edit/commands/layInstrument.ts";
import { removeThings } from "../../core/edit/commands/removeThings.ts";
import { renamePart } from "../../core/edit/commands/renamePart.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import type { Edit } from "../../core/edit/edit.ts";
import { leadPlace } from "../../renderer/canvas/leadPlace.ts";
import { leadsHere } from "../../renderer/canvas/leadTags.ts";
import { standingOn } from "../../renderer/canvas/standing.ts";
import { begunAnew, traced } from "../../renderer/state/traces.ts";
import { besideFigure, shownFigure } from "../../renderer/words/instrument.ts";
import { after, VENTS } from "../edit/given.ts";

/** The bench after a command. */
const made = (bench: Bench, command: (bench: Bench) => Outcome<Edit>): Bench => after(bench, command(bench));

const laid = made(benchFor(VENTS), (bench) => layInstrument(bench, "voltmeter"));
const clipped = made(laid, (bench) => clipLead(bench, "1", "red", "S5.6"));
const keyOn = (bench: Bench): Bench => made(bench, (now) => throwControl(now, "S1", "on"));

describe("leads on the drawing", () => {
  it("are where they are clipped, the red one with what is shown", () => {
    expect(leadsHere(laid)).toMatchObject([{ sign: "B", at: "battery -", words: "" }]);
    expect(leadsHere(keyOn(clipped))).toMatchObject([
      { sign: "R", number: "", at: "X5-6", words: "12.60\u00a0V" },
      { sign: "B", number: "", at: "battery -" },
    ]);
  });

  it("are numbered where several instruments lie on the bench", () => {
    const both = made(clipped, (bench) => layInstrument(bench, "small-lamp"));
    expect(leadsHere(both).map(({ number }) => number)).toEqual(["1", "1", "2"]);
  });

  it("follow what they are clipped to, and come off what goes", () => {
    const renamed = made(clipped, (bench) => renamePart(bench, "S5", "S50"));
    expect(leadsHere(renamed).map(({ at }) => at)).toEqual(["X5-6", "battery -"]);
    const gone = made(clipped, (bench) => removeThings(bench, ["S5", "X5"]));
    expect(leadsHere(gone).map(({ at }) => at)).toEqual(["battery -"]);
  });
});

describe("where a lead goes", () => {
  const standing = standingOn(VENTS, "p2", "iec");
  const wire = VENTS.wires.find(({ from, to }) => standing.spots.has(from) && standing.spots.has(to))!;
  const spot = standing.spots.get(wire.to)!;
  const tool = { is: "lead", instrument: "1", lead: "red", from: null } as const;

  it("is the terminal, or on a wire its nearer end; nowhere on bare paper", () => {
    expect(leadPlace(tool, { point: "X5-6", wire: null, spot }, VENTS, standing)).toBe("X5-6");
    expect(leadPlace(tool, { point: null, wire: wire.id, spot }, VENTS, standing)).toBe(wire.to);
    expect(leadPlace(tool, { point: null, wire: null, spot }, VENTS, standing)).toBeNull();
  });

  it("is for jaws the wire, or at a terminal the only one that leads there", () => {
    const jaws = { ...tool, lead: "jaws" } as const;
    expect(leadPlace(jaws, { point: null, wire: wire.id, spot }, VENTS, standing)).toBe(wire.id);
    const endsAt = (point: string) => VENTS.wires.filter(({ from, to }) => from === point || to === point);
    const points = [...new Set(VENTS.wires.flatMap(({ from, to }) => [from, to]))];
    const [alone, shared] = [1, 2].map((count) => points.find((point) => endsAt(point).length === count)!);
    expect(leadPlace(jaws, { point: alone!, wire: null, spot }, VENTS, standing)).toBe(endsAt(alone!)[0]!.id);
    expect(leadPlace(jaws, { point: shared!, wire: null, spot }, VENTS, standing)).toBeNull();
  });
});

describe("what an instrument showed lately", () => {
  it("has a figure more whenever it shows another, with lowest and highest, and is begun anew by hand", () => {
    const on = keyOn(clipped);
    const off = made(on, (bench) => throwControl(bench, "S1", "off"));
    const first = traced({}, laid, clipped);
    const then = traced(traced(first, clipped, on), on, off);
    expect(then["1"]?.values).toHaveLength(3);
    expect(then["1"]?.least).toBeCloseTo(0, 2);
    expect(then["1"]?.most).toBeCloseTo(12.6, 1);
    expect(begunAnew(then, off, "1")["1"]).toMatchObject({ least: expect.closeTo(0, 2), most: expect.closeTo(0, 2) });
  });

  it("begins anew where a lead goes elsewhere", () => {
    const on = keyOn(clipped);
    const moved = made(on, (bench) => clipLead(bench, "1", "red", "battery +"));
    expect(traced(traced({}, clipped, on), on, moved)["1"]?.values).toHaveLength(1);
  });
});

describe("words of what is shown", () => {
  it("are a figure with its unit, and beside it what to know", () => {
    expect(shownFigure({ shows: "free" })).toBe("");
    expect(besideFigure({ shows: "free" })).toContain("Clip");
    expect(shownFigure({ shows: "lamp", light: "dim", volts: 6, amps: 0.2 })).toBe("dim");
    expect(besideFigure({ shows: "volts", volts: 0, range: null, drifts: true })).toContain("floats");
    const shown = [0.42, 47, 1200, null].map((ohms) => shownFigure({ shows: "ohms", ohms }));
    expect(shown).toEqual(["0.4\u00a0Ω", "47\u00a0Ω", "1.2\u00a0kΩ", "open"]);
  });
});
