import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { copied } from "../../core/edit/fragment.ts";
import { fragmentText, readFragment } from "../../schemas/fragment.ts";
import { codeOf, got, SMALL } from "../edit/given.ts";

const text = fragmentText(copied(SMALL, ["S1", "X2", "M1"]));
const json = JSON.parse(text);

describe("the text of a fragment", () => {
  test("is read to the same fragment", () =>
    expect(got(readFragment(text))).toEqual(copied(SMALL, ["S1", "X2", "M1"])));

  test("may end its wires on terminals that a plug carries: they are moved to the cavity", () => {
    const wires = json.wires.map((wire: { to: string; from: string }) => ({
      ...wire,
      from: wire.from.replace("X1-2", "S1.2"),
    }));
    expect(wires).not.toEqual(json.wires);
    expect(got(readFragment(JSON.stringify({ ...json, wires })))).toEqual(got(readFragment(text)));
  });

  test.each([
    ["fragment-none", ""],
    ["fragment-none", "a relay"],
    ["fragment-none", "[1]"],
    ["fragment-none", '{"format":"wirefathom/circuit","version":1}'],
    ["fragment-none", text.slice(0, -1)],
    ["file-newer", JSON.stringify({ ...json, version: 2 })],
    ["file-field-unknown", JSON.stringify({ ...json, script: "x" })],
    ["file-field-missing", JSON.stringify({ ...json, parts: undefined })],
    ["file-type", JSON.stringify({ ...json, parts: {} })],
    ["file-field-unknown", JSON.stringify({ ...json, places: { S1: { page: "p1", x: 1, y: 1 } } })],
    ["part-kind", JSON.stringify({ ...json, parts: [{ id: "S1", kind: "flux" }] })],
    ["part-unknown", JSON.stringify({ ...json, places: { S9: { x: 1, y: 1 } } })],
    ["wire-unknown", JSON.stringify({ ...json, bends: { W99: [[1, 1]] } })],
    ["point-part", JSON.stringify({ ...json, wires: [{ id: "W1", from: "S9.1", to: "S1.1" }] })],
    ["twice", JSON.stringify({ ...json, parts: [...json.parts, json.parts[0]] })],
    ["connector-alone", JSON.stringify({ ...json, connectors: [{ id: "X9", rows: [["1"]] }] })],
  ])("is refused as %s: %s", (code, broken) => expect(codeOf(readFragment(broken))).toBe(code));

  test("damaged anywhere, is read or refused, never half read or thrown at", () => {
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(6), fc.string({ maxLength: 4 }), (at, gone, put) => {
        const read = readFragment(text.slice(0, at) + put + text.slice(at + gone));
        if (read.ok) expect(got(readFragment(fragmentText(read.value)))).toEqual(read.value);
        else expect(read.refusal.code).not.toBe("");
      }),
      { seed: 2, numRuns: 400 },
    );
  });
});
