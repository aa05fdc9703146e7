import { describe, expect, test } from "vitest";
import { netOf } from "../../core/circuit/nets.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { checkFrom } from "../../core/edit/checkFields.ts";
import { addAccess } from "../../core/edit/commands/addAccess.ts";
import { addCheck } from "../../core/edit/commands/addCheck.ts";
import { addPage } from "../../core/edit/commands/addPage.ts";
import { addScene } from "../../core/edit/commands/addScene.ts";
import { changeColourCodes } from "../../core/edit/commands/changeColourCodes.ts";
import { changeVolts } from "../../core/edit/commands/changeVolts.ts";
import { linkPages } from "../../core/edit/commands/linkPages.ts";
import { recolourWire } from "../../core/edit/commands/recolourWire.ts";
import { removeAccess } from "../../core/edit/commands/removeAccess.ts";
import { removeCheck } from "../../core/edit/commands/removeCheck.ts";
import { removePage } from "../../core/edit/commands/removePage.ts";
import { reorderPage } from "../../core/edit/commands/reorderPage.ts";
import { reorderScene } from "../../core/edit/commands/reorderScene.ts";
import { setReach } from "../../core/edit/commands/setReach.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { wordId } from "../../core/edit/wordId.ts";
import { judge } from "../../core/live/judge.ts";
import { after, afterAll, SMALL, VENTS } from "./given.ts";

const small = benchFor(SMALL);
const vents = benchFor(VENTS);
const labels = ({ circuit }: Bench) => circuit.scenes.map(({ label }) => label);

describe("places", () => {
  test("a group has an id of the words of its label", () => {
    const bench = after(small, addAccess(small, { label: " Seat  out, left ", minutes: 6, cautions: [" "] }));
    expect(bench.circuit.access.at(-1)).toEqual({
      id: "seat-out-left",
      label: "Seat out, left",
      minutes: 6,
      cautions: [],
    });
    expect(wordId([{ id: "dash" }], "Dash!", "access")).toBe("dash-2");
    expect(wordId([], "?!", "access")).toBe("access");
    expect(wordId([], "Constructor", "access")).toBe("access");
  });

  test("a group that goes leaves the rest of what was said of a place", () => {
    const bench = afterAll(
      SMALL,
      (now) => setReach(now, "M1", { access: "column", minutes: 2 }),
      (now) => removeAccess(now, "column"),
    );
    expect(bench.circuit.reach.M1).toEqual({ minutes: 2 });
    expect(Object.hasOwn(bench.circuit.reach, "S1")).toBe(false);
    const without = after(small, removeAccess(small, "dash"));
    expect(without.circuit.access).toEqual([{ id: "column", label: "Column shroud off", minutes: 3, after: [] }]);
  });
});

describe("pages", () => {
  test("a new one is A4 on its side, after all others", () => {
    const bench = after(small, addPage(small, { title: " Doors " }));
    expect(bench.circuit.pages.at(-1)).toEqual({ id: "p3", title: "Doors", widthMm: 297, heightMm: 210 });
  });

  test("one that goes hands its parts over, each to the same place", () => {
    const bench = after(small, removePage(small, "p2", "p1"));
    expect(bench.circuit.pages.map(({ id }) => id)).toEqual(["p1"]);
    expect(bench.circuit.placement.parts.GP2).toEqual({ page: "p1", x: 20, y: 20 });
  });

  test("change places", () => {
    const ids = (bench: Bench) => bench.circuit.pages.map(({ id }) => id);
    expect(ids(after(vents, reorderPage(vents, "p1", 2)))).toEqual(["p2", "p3", "p1", "p4"]);
    expect(ids(after(vents, reorderPage(vents, "p4", 0)))).toEqual(["p4", "p1", "p2", "p3"]);
  });

  test("are joined by links of one name", () => {
    const bench = after(vents, linkPages(vents, ["L1", "L2"], "Feeds"));
    expect(netOf(bench.circuit, "L1.1")!.points).toContain("L2.1");
    expect(netOf(bench.circuit, "L1.1")!.points).not.toContain("L3.1");
  });
});

describe("the head of a circuit", () => {
  test("in other colour codes has its wires written anew, and those it cannot write as they were", () => {
    const odd = after(vents, recolourWire(vents, "W2", "TQ"));
    const german = after(odd, changeColourCodes(odd, "german"));
    const colour = (bench: Bench, id: string) => bench.circuit.wires.find((wire) => wire.id === id)!.colour;
    expect([colour(german, "W1"), colour(german, "W2")]).toEqual(["rt", "TQ"]);
    const back = after(german, changeColourCodes(german, "iec60757"));
    expect(back.circuit.wires).toEqual(odd.circuit.wires);
  });

  test("of other volts takes what its parts do not write along", () => {
    const bench = after(vents, changeVolts(vents, "24 V"));
    const volts = (of: Bench) => liveNow(of).shown.points.get("G1.+")!.volts!;
    expect(volts(bench)).toBeGreaterThan(1.9 * volts(vents));
  });
});

describe("checks and scenes", () => {
  const open = afterAll(
    VENTS,
    (now) => throwControl(now, "S1", "on"),
    (now) => throwControl(now, "S5", "open"),
  );

  test("a check of the present condition works there and then", () => {
    const given = checkFrom(open, "M3", "forward");
    expect(given).toEqual({
      label: "Middle vent motor runs forward",
      condition: { set: { S1: "on", S5: "open" } },
      load: "M3",
      expect: "forward",
    });
    const bench = after(open, addCheck(open, given));
    const check = bench.circuit.checks.at(-1)!;
    expect(check.id).toBe("middle-vent-motor-runs-forward");
    expect(judge(check, liveNow(bench).shown.parts.get("M3"))).toBe("works");
  });

  test("a check that goes takes what was noted of it along", () => {
    const noted: Bench = { ...small, complaint: "wiper-on", observed: { "wiper-on": "dead" } };
    const bench = after(noted, removeCheck(noted, "wiper-on"));
    expect([bench.complaint, bench.observed, bench.circuit.checks]).toEqual([null, {}, []]);
  });

  test("a scene shows the present condition, in its place among the others", () => {
    const bench = after(open, addScene(open, { label: "Middle held open", caption: " Watch M3. " }, 1));
    expect(bench.circuit.scenes[1]).toEqual({
      label: "Middle held open",
      condition: { set: { S1: "on", S5: "open" } },
      caption: "Watch M3.",
    });
    const moved = after(bench, reorderScene(bench, 1, 0));
    expect(labels(moved).slice(0, 2)).toEqual(["Middle held open", VENTS.scenes[0]!.label]);
  });
});
