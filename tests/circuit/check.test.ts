import { describe, expect, test } from "vitest";
import { sentence, WORDS } from "../../core/base/words.ts";
import { problemsOf } from "../../core/circuit/check.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Part } from "../../core/parts/kind.ts";
import { copy, SMALL } from "./small.ts";

const listed = (circuit: Circuit) =>
  problemsOf(circuit).map(({ severity, code, at }) => (severity === "problem" ? `${code} ${at}` : `(${code} ${at})`));

// biome-ignore lint/suspicious/noExplicitAny: a broken circuit has no type
function after(change: (circuit: any) => void): readonly string[] {
  const circuit = copy();
  change(circuit);
  return listed(circuit);
}

/** A circuit of parts and wires alone, on no page: `"G1.+ F1.1"` is a wire between the two. */
function net(parts: readonly Part[], ...wires: readonly string[]): Circuit {
  return {
    ...SMALL,
    pages: [],
    parts,
    wires: wires.map((ends, index) => {
      const [from = "", to = ""] = ends.split(" ");
      return { id: `W${index + 1}`, from, to, colour: "RD", mm2: 1 };
    }),
    placement: { parts: {}, wires: {} },
    connectors: [],
    access: [],
    reach: {},
    checks: [],
    scenes: [],
  };
}
const G1: Part = { id: "G1", kind: "battery" };
const G2: Part = { id: "G2", kind: "battery" };
const E1: Part = { id: "E1", kind: "lamp" };
const F1: Part = { id: "F1", kind: "fuse" };

describe("a whole drawing", () => {
  test("has no problems and no loose ends", () => {
    expect(listed(SMALL)).toEqual([]);
  });

  test("may be empty", () => {
    expect(listed(net([]))).toEqual([]);
  });
});

describe("wires", () => {
  test.each<readonly [string, (wire: Record<string, unknown>) => void, readonly string[]]>([
    ["to an empty cavity", (wire) => Object.assign(wire, { to: "X1-4" }), ["wire-to-nowhere W2", "no-supply M1"]],
    ["to a part that is gone", (wire) => Object.assign(wire, { to: "S7.1" }), ["wire-to-nowhere W2", "no-supply M1"]],
    ["to where it comes from", (wire) => Object.assign(wire, { to: "F1.2" }), ["wire-to-itself W2", "no-supply M1"]],
    ["without colour", (wire) => delete wire.colour, ["(wire-without-colour W2)"]],
    [
      "without colour and size",
      (wire) => Object.assign(wire, { colour: undefined, mm2: undefined }),
      ["(wire-bare W2)"],
    ],
    ["without size or ohms", (wire) => delete wire.mm2, ["(wire-without-size W2)"]],
    ["with ohms in place of a size", (wire) => Object.assign(wire, { mm2: undefined, ohms: 0.1 }), []],
    ["of a colour the set does not have", (wire) => Object.assign(wire, { colour: "sw" }), ["wire-colour W2"]],
    ["orange, thick and plain", (wire) => Object.assign(wire, { colour: "OG", mm2: 35 }), ["orange-cable W2"]],
    ["orange and thin", (wire) => Object.assign(wire, { colour: "OG" }), []],
    ["orange with a stripe", (wire) => Object.assign(wire, { colour: "OG/BK", mm2: 10 }), []],
  ])("a wire %s", (_, change, expected) => {
    const found = after((circuit) => change(circuit.wires[1]));
    expect(found).toEqual(expect.arrayContaining([...expected]));
    if (expected.length === 0) expect(found).toEqual([]);
  });

  test("colours are free where the circuit says so", () => {
    expect(
      after((c) => Object.assign(c, { colourCodes: "free" }).wires.map((w: { colour: string }) => (w.colour = "?"))),
    ).toEqual([]);
  });

  test("from page to page need a link", () => {
    expect(after((c) => Object.assign(c.placement.parts.M1, { page: "p2" }))).toEqual([
      "wire-across-pages W4",
      "wire-across-pages W5",
    ]);
  });

  test("a terminal without one is a loose end, at the cavity's terminal too", () => {
    expect(after((c) => c.wires.splice(8, 1))).toEqual(["(terminal-without-wire S1.3)"]);
  });
});

describe("parts", () => {
  test("a link alone of its name is a loose end", () => {
    expect(after((c) => Object.assign(c.parts[6].settings, { name: "15" }))).toEqual([
      "no-return M1",
      "(link-alone L1)",
      "(link-alone L2)",
    ]);
  });

  test("a part that stands on no page is a loose end", () => {
    expect(after((c) => delete c.placement.parts.M1)).toEqual(["(part-not-placed M1)"]);
  });

  test("one that lies over another is a loose end, one that only touches it is none", () => {
    const at = (x: number, y: number) => after((c) => Object.assign(c.placement.parts.G1, { x, y }));
    expect(at(6, 24)).toEqual(["(part-over-part F1)"]);
    expect(at(8, 24)).toEqual([]);
    expect(at(24, 24)).toEqual(["(part-over-part S1)"]);
  });

  test("a switch without positions is a problem", () => {
    expect(after((c) => delete c.parts[2].positions)).toContain("switch-without-positions S1");
  });

  test("a link without its name is a problem", () => {
    expect(after((c) => delete c.parts[5].settings)).toContain("setting-missing L1");
  });

  test("an unknown kind is a problem", () => {
    expect(after((c) => Object.assign(c.parts[4], { kind: "flux" }))).toContain("part-kind M1");
  });

  test("a check must watch a part that works", () => {
    expect(after((c) => Object.assign(c.checks[0], { load: "F1" }))).toEqual(["check-without-work wiper-on"]);
    expect(after((c) => Object.assign(c.checks[0], { load: "M9" }))).toEqual(["check-without-work wiper-on"]);
  });

  test("more than 60 volts is out of scope", () => {
    expect(after((c) => Object.assign(c, { nominalVolts: 400 }))).toContain("over-60-volts ");
  });
});

describe("trim", () => {
  test("is reached through groups that are there, are used, and do not come after themselves", () => {
    expect(after((c) => Object.assign(c.access[0], { after: ["column"] }))).toEqual([
      "access-loop dash",
      "access-loop column",
    ]);
    expect(after((c) => delete c.reach.S1)).toEqual(["(access-unused column)"]);
    expect(after((c) => Object.assign(c.reach, { M1: { access: "roof" } }))).toEqual(["access-unknown M1"]);
    expect(after((c) => Object.assign(c.reach, { M9: {} }))).toEqual(["reach-unknown M9"]);
  });
});

describe("supply", () => {
  test("a loop through battery, fuse and lamp is whole", () => {
    expect(listed(net([G1, F1, E1], "G1.+ F1.1", "F1.2 E1.1", "E1.2 G1.-"))).toEqual([]);
  });

  test("a drawing without a battery has none", () => {
    expect(listed(net([E1], "E1.1 E1.2"))).toEqual(["no-battery ", "load-bridged E1"]);
  });

  test("a lamp that is fed and leads nowhere has no return", () => {
    expect(listed(net([G1, F1, E1], "G1.+ E1.1", "E1.2 F1.1", "F1.2 F1.2"))).toContain("no-return E1");
    expect(listed(net([G1, E1], "G1.+ E1.1"))).toContain("no-return E1");
  });

  test("a lamp on the return alone has no supply", () => {
    expect(listed(net([G1, F1, E1], "G1.- E1.1", "E1.2 F1.1"))).toContain("no-supply E1");
  });

  test("a loop of its own has no supply", () => {
    const found = listed(net([G1, F1, E1], "F1.1 E1.1", "E1.2 F1.2"));
    expect(found).toContain("no-supply E1");
    expect(found).not.toContain("no-return E1");
  });

  test("two lamps in a row are one loop", () => {
    const E2: Part = { id: "E2", kind: "lamp" };
    expect(listed(net([G1, E1, E2], "G1.+ E1.1", "E1.2 E2.1", "E2.2 G1.-"))).toEqual([]);
  });

  test("ground points of one body close a loop, those of two bodies do not", () => {
    const ground = (id: string, body: string): Part => ({ id, kind: "ground", settings: { body } });
    const wires = ["G1.+ E1.1", "E1.2 GP1.stud", "GP2.stud G1.-"];
    expect(listed(net([G1, E1, ground("GP1", "engine"), ground("GP2", "engine")], ...wires))).toEqual([]);
    expect(listed(net([G1, E1, ground("GP1", "engine"), ground("GP2", "cab")], ...wires))).toEqual(["no-return E1"]);
  });

  test("a battery joined plus to minus by a wire is shorted", () => {
    expect(listed(net([G1], "G1.+ G1.-"))).toEqual(["battery-shorted G1"]);
  });

  test("two batteries in a row, or side by side, are no problem", () => {
    const marked: Part = { ...G1, settings: { reference: true } };
    expect(listed(net([marked, G2, E1], "G1.+ G2.-", "G2.+ E1.1", "E1.2 G1.-"))).toEqual([]);
    expect(listed(net([marked, G2, E1], "G1.+ G2.+", "G1.- G2.-", "G2.+ E1.1", "E1.2 G1.-"))).toEqual([]);
  });

  test("two batteries with plus on plus and their minus apart face each other", () => {
    expect(
      listed(net([{ ...G1, settings: { reference: true } }, G2, E1], "G1.+ G2.+", "G2.- E1.1", "E1.2 G1.-")),
    ).toEqual(["batteries-facing G1"]);
  });

  test("two batteries in a ring short each other", () => {
    expect(listed(net([{ ...G1, settings: { reference: true } }, G2], "G1.+ G2.-", "G2.+ G1.-"))).toEqual([
      "batteries-in-a-ring G1",
    ]);
  });

  test("of several batteries one is the reference", () => {
    const marked = (part: Part): Part => ({ ...part, settings: { reference: true } });
    const wires = ["G1.+ G2.+", "G1.- G2.-", "G2.+ E1.1", "E1.2 G1.-"];
    expect(listed(net([G1, G2, E1], ...wires))).toEqual(["(reference-not-said G1)"]);
    expect(listed(net([marked(G1), marked(G2), E1], ...wires))).toEqual(["references-many G2"]);
  });
});

test("problems come before loose ends, and each has a sentence with all its places filled", () => {
  const circuit = copy();
  delete circuit.wires[0].colour;
  delete circuit.wires[3].mm2;
  circuit.parts[2].positions = undefined;
  circuit.parts[6].settings.name = "15";
  circuit.wires[1].to = "X1-4";
  delete circuit.placement.parts.F1;
  const found = problemsOf(circuit);
  expect(found.length).toBeGreaterThan(7);
  const severities = found.map(({ severity }) => severity);
  expect(severities).toEqual([...severities].sort().reverse());
  for (const each of found) {
    expect(
      WORDS.some((area) => Object.hasOwn(area, each.code)),
      each.code,
    ).toBe(true);
    expect(sentence(each)).toMatch(/^[^{}]+\.$/);
  }
});

describe("values of one part", () => {
  test.each([
    [
      { id: "K1", kind: "relay", settings: { dropOutVolts: 8.5 } },
      "K1: drops out at 8.5 V must be less than pulls in at",
    ],
    [{ id: "K1", kind: "relay", settings: { pullInVolts: 1 } }, "must be less than pulls in at 1 V."],
    [{ id: "Y1", kind: "solenoid", settings: { dropOutVolts: 9, pullInVolts: 9 } }, "Y1: lets go at 9 V must be less"],
    [{ id: "M1", kind: "motor", settings: { amps: 12 } }, "M1: amps running with its mechanism 12 A must be less"],
  ])("that contradict each other are a problem: %o", (part, words) => {
    const [found, ...others] = problemsOf(net([G1, part])).filter(({ code }) => code === "setting-order");
    expect(others).toEqual([]);
    expect(found).toMatchObject({ severity: "problem", at: part.id });
    expect(sentence(found!)).toContain(words);
  });
});
