import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { sentence, WORDS } from "../../core/base/words.ts";
import { formatCircuit, readCircuit } from "../../schemas/circuit.ts";
import { circuitJsonSchema } from "../../schemas/jsonSchema.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { copy, SMALL } from "../circuit/small.ts";

/** What reading gives for a copy of the small circuit after a change: "read", or the refusal's code and path. */
// biome-ignore lint/suspicious/noExplicitAny: a broken file has no type
function after(change: (circuit: any) => void): string {
  const circuit = copy();
  change(circuit);
  return answer(JSON.stringify(circuit));
}

function answer(file: string | Uint8Array): string {
  const read = readCircuit(file);
  if (read.ok) return "read";
  const { code, about } = read.refusal;
  const where = about.path ?? (about.line === undefined ? undefined : `${about.line}:${about.column}`);
  return where === undefined ? code : `${code} ${where}`;
}

describe("a good file", () => {
  test("is read as the circuit it says", () => {
    expect(readCircuit(JSON.stringify(SMALL))).toEqual({ ok: true, value: SMALL });
  });

  test("is read the same from bytes, and with a byte order mark", () => {
    const text = formatCircuit(SMALL);
    expect(readCircuit(new TextEncoder().encode(text))).toEqual({ ok: true, value: SMALL });
    expect(readCircuit(new TextEncoder().encode(`\ufeff${text}`))).toEqual({ ok: true, value: SMALL });
    expect(readCircuit(`\ufeff${text}`)).toEqual({ ok: true, value: SMALL });
  });

  test("may name a part's terminals in its own way", () => {
    const circuit = copy();
    circuit.parts[4].terminals = ["black", "white"];
    Object.assign(circuit.wires[3], { to: "M1.black" });
    Object.assign(circuit.wires[4], { from: "M1.white" });
    circuit.reach = {};
    expect(answer(JSON.stringify(circuit))).toBe("read");
  });

  test("may leave its lists out", () => {
    const { format, version, title, nominalVolts, colourCodes, pages } = SMALL;
    const read = readCircuit(
      JSON.stringify({ format, version, title, nominalVolts, colourCodes, pages, parts: [], wires: [] }),
    );
    const empty = {
      placement: { parts: {}, wires: {} },
      connectors: [],
      access: [],
      reach: {},
      checks: [],
      scenes: [],
    };
    expect(read.ok && read.value).toMatchObject(empty);
  });

  test("saved unchanged gives the same bytes", () => {
    const text = formatCircuit(SMALL);
    const read = readCircuit(text);
    expect(read.ok && formatCircuit(read.value)).toBe(text);
    expect(text.endsWith("}\n")).toBe(true);
  });

  test("has its fields in the schema's order, whatever the order they came in", () => {
    const turned = Object.fromEntries(Object.entries(copy()).reverse());
    const read = readCircuit(JSON.stringify(turned));
    expect(read.ok && formatCircuit(read.value)).toBe(formatCircuit(SMALL));
  });

  test("keeps the order in which a condition throws its controls", () => {
    const circuit = copy();
    circuit.parts.push({ ...circuit.parts[2], id: "S2" });
    circuit.scenes[0].condition.set = { S2: "on", S1: "on" };
    const read = readCircuit(JSON.stringify(circuit));
    const back = read.ok ? readCircuit(formatCircuit(read.value)) : read;
    expect(back.ok && Object.keys(back.value.scenes[0]!.condition.set!)).toEqual(["S2", "S1"]);
  });

  test("has a question's fields in that order too, and its points in their one spelling", () => {
    const circuit = copy();
    circuit.scenes[0].questions = [{ lamp: "4 A lamp", lampTo: "battery +", point: "X2.1a", asks: "lamp" }];
    const read = readCircuit(JSON.stringify(circuit));
    expect(read.ok && formatCircuit(read.value)).toContain(
      '{ "asks": "lamp", "point": "X2-1a", "lampTo": "battery +", "lamp": "4 A lamp" }',
    );
  });

  test("puts one wire on one line", () => {
    expect(
      formatCircuit(SMALL)
        .split("\n")
        .filter((line) => line.includes('"id": "W')),
    ).toHaveLength(SMALL.wires.length);
  });
});

describe("reading writes each point in its one spelling", () => {
  test("a wire end on a carried terminal goes to the cavity", () => {
    const circuit = copy();
    circuit.wires[1].to = "S1.1";
    const read = readCircuit(JSON.stringify(circuit));
    expect(read).toEqual({ ok: true, value: SMALL });
  });

  test("a side of a joint written with a dot gets its dash", () => {
    const circuit = copy();
    circuit.wires[3].from = "X2.1b";
    expect(readCircuit(JSON.stringify(circuit))).toEqual({ ok: true, value: SMALL });
  });

  test("an output driven by its cavity is named as the module's pin", () => {
    const circuit = copy();
    circuit.parts.push({ id: "U1", kind: "module", pins: { "30": "supply", "31": "ground", out: "drives-high" } });
    circuit.connectors.push({ id: "X9", rows: [["1"]], cavities: { "1": "U1.out" } });
    circuit.scenes[0].condition.drive = { "X9-1": "on" };
    const read = readCircuit(JSON.stringify(circuit));
    expect(read.ok && read.value.scenes[0]!.condition.drive).toEqual({ "U1.out": "on" });
  });
});

describe("what is no circuit file is refused before anything is read", () => {
  test.each([
    ["an empty file", "", "file-empty"],
    ["blanks", " \n ", "file-empty"],
    ["prose", "Wiper circuit of the van", "file-not-json"],
    ["a list", "[]", "file-not-json"],
    ["another format", '{ "format": "other" }', "file-format"],
    ["no format", "{}", "file-format"],
    ["a file cut off", '{ "format": "wirefathom/circuit",\n  "version": 1', "file-json 2:15"],
    ["a comma too many", '{\n  "format": 1,\n}', "file-json 3:1"],
    ["a comment", "{\n  // hello\n}", "file-json 2:3"],
    ["something after the end", "{} {}", "file-json 1:4"],
    ["a bare line break in a text", '{ "format": "a\nb" }', "file-json 1:13"],
    ["a number that is none", '{ "version": 01 }', "file-json 1:15"],
    ["a name twice", '{ "format": 1,\n "format": 2 }', "file-name-twice 2:2"],
    ["a name that every object has by birth", '{ "__proto__": {} }', "file-name 1:3"],
    ["lists without end", `{ "a": ${"[".repeat(100_000)}`, `file-too-deep 1:${8 + LIMITS.depth - 1}`],
  ])("%s", (_, text, code) => {
    expect(answer(text)).toBe(code);
  });

  test.each([
    ["a PNG picture", [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a]],
    ["a JPEG picture", [0xff, 0xd8, 0xff, 0xe0]],
    ["a PDF", [0x25, 0x50, 0x44, 0x46, 0x2d]],
    ["a packed archive", [0x50, 0x4b, 0x03, 0x04]],
    ["text in UTF-16", [0xff, 0xfe, 0x7b, 0x00]],
    ["bytes that are no UTF-8", [0x7b, 0xc3, 0x28, 0x7d]],
    ["bytes with a zero", [0x7b, 0x00, 0x7d]],
  ])("%s", (_, bytes) => {
    expect(answer(Uint8Array.from(bytes))).toBe("file-not-text");
  });

  test("a file over the limit, without looking into it", () => {
    expect(answer(new Uint8Array(LIMITS.bytes + 1))).toBe("file-too-large");
    expect(answer("{".padEnd(LIMITS.bytes + 1))).toBe("file-too-large");
  });

  test("a newer version by its own sentence, though its fields are not known", () => {
    expect(after((circuit) => Object.assign(circuit, { version: 2, harness: {} }))).toBe("file-newer");
  });
});

// biome-ignore lint/suspicious/noExplicitAny: a broken file has no type
const REFUSED: readonly (readonly [string, (circuit: any) => void])[] = [
  ["file-choice version", (c) => Object.assign(c, { version: 0 })],
  ["file-field-unknown the file", (c) => Object.assign(c, { colour: "red" })],
  ["file-field-unknown parts[0]", (c) => Object.assign(c.parts[0], { color: "red" })],
  ["file-field-unknown wires[1]", (c) => Object.assign(c.wires[1], { gauge: 14 })],
  ["file-field-unknown checks[0].condition", (c) => Object.assign(c.checks[0].condition, { sets: {} })],
  ["file-field-missing the file", (c) => delete c.title],
  ["file-field-missing wires[2]", (c) => delete c.wires[2].from],
  ["file-type title", (c) => Object.assign(c, { title: 4 })],
  ["file-type title", (c) => Object.assign(c, { title: null })],
  ["file-type wires", (c) => Object.assign(c, { wires: {} })],
  ["file-type wires[0].metres", (c) => Object.assign(c.wires[0], { metres: "2 m" })],
  ["file-type access[0].hands", (c) => Object.assign(c.access[0], { hands: 3 })],
  ["file-type placement.parts.M1.turn", (c) => Object.assign(c.placement.parts.M1, { turn: 45 })],
  ["file-type placement.parts.M1.x", (c) => Object.assign(c.placement.parts.M1, { x: 1.5 })],
  ["file-choice colourCodes", (c) => Object.assign(c, { colourCodes: "mine" })],
  ["file-choice checks[0].expect", (c) => Object.assign(c.checks[0], { expect: "works" })],
  ["file-limit wires[0].metres", (c) => Object.assign(c.wires[0], { metres: -1 })],
  ["file-limit title", (c) => Object.assign(c, { title: "x".repeat(LIMITS.labelLength + 1) })],
  ["file-limit parts[2].positions[0].joins[0]", (c) => c.parts[2].positions[0].joins[0].push("1")],
  ["file-limit parts[2].positions", (c) => Object.assign(c.parts[2], { positions: [] })],
  ["file-name parts[0].id", (c) => Object.assign(c.parts[0], { id: "G.1" })],
  ["file-name parts[0].id", (c) => Object.assign(c.parts[0], { id: "constructor" })],
  ["file-name reach.toString", (c) => Object.assign(c.reach, { toString: { minutes: 1 } })],
  ["twice pages[1]", (c) => Object.assign(c.pages[1], { id: "p1" })],
  ["twice parts[1]", (c) => Object.assign(c.parts[1], { id: "G1" })],
  ["twice wires[4]", (c) => Object.assign(c.wires[4], { id: "W1" })],
  ["twice wires[4]", (c) => Object.assign(c.wires[4], { id: "M1" })],
  ["twice connectors[0]", (c) => Object.assign(c.connectors[0], { id: "M1" })],
  ["twice access[1]", (c) => Object.assign(c.access[1], { id: "dash" })],
  ["twice checks[1]", (c) => c.checks.push(c.checks[0])],
  ["twice parts[2].terminals[3]", (c) => c.parts[2].terminals.push("1")],
  ["twice parts[2].positions[1]", (c) => Object.assign(c.parts[2].positions[1], { name: "off" })],
  ["twice connectors[0].rows[4]", (c) => Object.assign(c.connectors[0].rows[1], { 2: "1" })],
  ["part-kind parts[0]", (c) => Object.assign(c.parts[0], { kind: "flux" })],
  ["part-kind parts[0]", (c) => Object.assign(c.parts[0], { kind: "constructor" })],
  ["setting-unknown parts[4].settings.torque", (c) => Object.assign(c.parts[4].settings, { torque: 1 })],
  ["setting-type parts[4].settings.amps", (c) => Object.assign(c.parts[4].settings, { amps: "3" })],
  ["setting-limits parts[4].settings.amps", (c) => Object.assign(c.parts[4].settings, { amps: 1e6 })],
  ["setting-missing parts[5].settings", (c) => delete c.parts[5].settings],
  [
    "part-positions-twice parts[2]",
    (c) => Object.assign(c.parts[2], { controls: [{ name: "a", positions: [{ name: "b", joins: [] }] }] }),
  ],
  ["part-positions-idle parts[4]", (c) => Object.assign(c.parts[4], { positions: c.parts[2].positions })],
  ["part-pins-idle parts[4]", (c) => Object.assign(c.parts[4], { pins: { "1": "supply" } })],
  ["part-terminals parts[4].terminals", (c) => Object.assign(c.parts[4], { terminals: ["1"] })],
  ["part-terminals parts[4].terminals", (c) => Object.assign(c.parts[4], { terminals: ["1", "2", "3"] })],
  [
    "point-terminal parts[2].positions[1].joins[0]",
    (c) => Object.assign(c.parts[2].positions[1], { joins: [["1", "9"]] }),
  ],
  [
    "join-itself parts[2].positions[1].joins[0]",
    (c) => Object.assign(c.parts[2].positions[1], { joins: [["1", "1"]] }),
  ],
  [
    "position-unknown parts[2].positions[2].springsBackTo",
    (c) => Object.assign(c.parts[2].positions[2], { springsBackTo: "rest" }),
  ],
  ["rest-springs-back parts[2].positions[0]", (c) => Object.assign(c.parts[2].positions[0], { springsBackTo: "on" })],
  ["point-part wires[0].from", (c) => Object.assign(c.wires[0], { from: "G7.+" })],
  ["point-terminal wires[0].from", (c) => Object.assign(c.wires[0], { from: "G1.30" })],
  ["point-connector wires[1].to", (c) => Object.assign(c.wires[1], { to: "X7-1" })],
  ["point-cavity wires[1].to", (c) => Object.assign(c.wires[1], { to: "X1-5" })],
  ["point-spelling wires[1].to", (c) => Object.assign(c.wires[1], { to: "X1" })],
  ["point-cavity connectors[0].cavities.5", (c) => Object.assign(c.connectors[0].cavities, { 5: "M1.1" })],
  ["point-terminal connectors[0].cavities.4", (c) => Object.assign(c.connectors[0].cavities, { 4: "M1.9" })],
  ["cavity-carries connectors[0].cavities.4", (c) => Object.assign(c.connectors[0].cavities, { 4: "X1-1" })],
  ["carried-twice connectors[0].cavities.4", (c) => Object.assign(c.connectors[0].cavities, { 4: "S1.1" })],
  ["connector-alone connectors[1]", (c) => Object.assign(c.connectors[1], { id: "X3" })],
  ["point-terminal connectors[1].rows", (c) => c.connectors[1].rows[0].push("9")],
  ["part-unknown placement.parts.M9", (c) => Object.assign(c.placement.parts, { M9: c.placement.parts.M1 })],
  ["page-unknown placement.parts.M1.page", (c) => Object.assign(c.placement.parts.M1, { page: "p9" })],
  ["wire-unknown placement.wires.W99", (c) => Object.assign(c.placement.wires, { W99: [] })],
  ["access-unknown access[1].after", (c) => Object.assign(c.access[1], { after: ["roof"] })],
  ["access-loop access[0].after", (c) => Object.assign(c.access[0], { after: ["column"] })],
  ["reach-unknown reach.S9", (c) => Object.assign(c.reach, { S9: {} })],
  ["access-unknown reach.M1.access", (c) => Object.assign(c.reach, { M1: { access: "roof" } })],
  ["part-unknown checks[0].load", (c) => Object.assign(c.checks[0], { load: "M9" })],
  ["control-unknown checks[0].condition.set.S9", (c) => Object.assign(c.checks[0].condition.set, { S9: "on" })],
  ["position-unknown checks[0].condition.set.S1", (c) => Object.assign(c.checks[0].condition.set, { S1: "fast" })],
  ["point-connector scenes[0].condition.apart[1]", (c) => c.scenes[0].condition.apart.push("M1")],
  ["part-unknown scenes[0].condition.out[1]", (c) => c.scenes[0].condition.out.push("F9")],
  ["part-unknown scenes[0].focus[1]", (c) => Object.assign(c.scenes[0], { focus: ["M1", "M9"] })],
  ["twice scenes[0].focus[1]", (c) => Object.assign(c.scenes[0], { focus: ["M1", "M1"] })],
  ["point-cavity scenes[0].questions[1].point", (c) => asking(c, { asks: "state", point: "X1-9" })],
  ["point-spelling scenes[0].questions[1].black", (c) => asking(c, { asks: "volts", point: "M1.1", black: "battery" })],
  ["file-limit scenes[0].seconds", (c) => Object.assign(c.scenes[0], { seconds: 0 })],
  [
    "point-part scenes[0].condition.drive.U9.1",
    (c) => Object.assign(c.scenes[0].condition, { drive: { "U9.1": "on" } }),
  ],
];

/** Has the first scene ask a good question, then this one. */
// biome-ignore lint/suspicious/noExplicitAny: a broken file has no type
function asking(circuit: any, question: object): void {
  circuit.scenes[0].questions = [{ asks: "state", point: "M1.1" }, question];
}

describe("what does not hold together is refused with its path", () => {
  test.each(REFUSED)("%s", (expected, change) => {
    expect(after(change)).toBe(expected);
  });

  test("numbers that run over are refused, not read as infinite", () => {
    expect(answer(JSON.stringify(SMALL).replace('"metres":0.5', '"metres":1e999'))).toBe("file-type wires[0].metres");
  });

  test("more parts than the limit are refused", () => {
    const lamps = Array.from({ length: LIMITS.parts + 1 }, (_, index) => ({ id: `E${index}`, kind: "lamp" }));
    expect(after((circuit) => Object.assign(circuit, { parts: lamps }))).toBe("file-limit parts");
  });

  test("a limit is told with what is counted, where something is", () => {
    const words = (change: (circuit: ReturnType<typeof copy>) => unknown): string => {
      const circuit = copy();
      change(circuit);
      const read = readCircuit(JSON.stringify(circuit));
      return read.ok ? "" : sentence(read.refusal);
    };
    expect(words((c) => Object.assign(c.wires[0], { metres: -1 }))).toBe(
      "At wires[0].metres: Allowed here: at least 0, not -1.",
    );
    expect(words((c) => Object.assign(c, { title: "x".repeat(200) }))).toBe(
      "At title: Allowed here: at most 160 characters, not 200.",
    );
  });

  test("every refusal has a sentence with all its places filled", () => {
    for (const [expected, change] of REFUSED) {
      const circuit = copy();
      change(circuit);
      const read = readCircuit(JSON.stringify(circuit));
      const words = read.ok ? "" : sentence(read.refusal);
      expect(words, expected).toMatch(/^\S.*\.$/);
      expect(words, expected).not.toMatch(/[{}]| [,.]| {2}/);
      expect(
        WORDS.some((area) => Object.hasOwn(area, expected.split(" ")[0]!)),
        expected,
      ).toBe(true);
    }
  });
});

test("the written JSON Schema is the one the shape gives", () => {
  const written = readFileSync(new URL("../../schemas/circuit.schema.json", import.meta.url), "utf8");
  expect(written).toBe(circuitJsonSchema());
});
