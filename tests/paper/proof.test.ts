import { describe, expect, test } from "vitest";
import type { Circuit, FunctionCheck } from "../../core/circuit/circuit.ts";
import { foundBy } from "../../core/diagnose/found.ts";
import { handoverFacts } from "../../core/diagnose/handoverFacts.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { proofRun } from "../../core/diagnose/proofRun.ts";
import type { Reading } from "../../core/diagnose/reading.ts";
import { parseReading } from "../../core/diagnose/readingText.ts";
import { suspectsFor } from "../../core/diagnose/suspects.ts";
import { type HandoverInput, handoverSheets, MOST_WORDS, wordsIn } from "../../core/paper/handover.ts";
import type { Sheet } from "../../core/paper/page.ts";
import { designatorsIn, inPlainWords } from "../../core/paper/plainWords.ts";
import { proofSheets } from "../../core/paper/proofSheet.ts";
import { trials } from "../long.ts";
import { SAMPLE_NAMES, sample } from "../samples/onTheBench.ts";
import { faultsOf, wordsIn as wordsInCells } from "./geometry.ts";

const vents = sample("1-roof-vents");

function checkOf(circuit: Circuit, id: string): FunctionCheck {
  return circuit.checks.find((check) => check.id === id)!;
}

/** Every sixth suspect of the first complaint that has any, in the long form every third. */
function casesOf(circuit: Circuit): readonly (readonly [FunctionCheck, string])[] {
  const complaint = circuit.checks.find(
    (check) => check.expect !== "off" && suspectsFor(circuit, { check, word: "dead" }).length > 0,
  )!;
  return suspectsFor(circuit, { check: complaint, word: "dead" })
    .filter((_, index) => index % trials(6, 3) === 0)
    .map(({ possible }) => [complaint, possible.id] as const);
}

function inputFor(circuit: Circuit, complaint: FunctionCheck, fault: string): HandoverInput {
  const found = possibleFaults(circuit).find(({ id }) => id === fault)!;
  const facts = handoverFacts({ circuit, complaint, found });
  if (!facts.ok) throw new Error(facts.refusal.code);
  return { circuit, complaint, found, facts: facts.value, observed: "dead" };
}

function pageFor(input: HandoverInput): Sheet {
  const sheets = handoverSheets(input);
  if (!sheets.ok) throw new Error(sheets.refusal.code);
  return sheets.value[0]!;
}

function textOf(sheet: Sheet): string {
  return sheet.marks.flatMap((mark) => (mark.mark === "text" ? [mark.text] : [])).join(" ");
}

describe("the handover page", () => {
  test.each(SAMPLE_NAMES)("of suspects of %s is laid out without a fault, in few and plain words", (name) => {
    const circuit = sample(name);
    const cases = casesOf(circuit);
    expect(cases.length).toBeGreaterThan(2);
    for (const [complaint, fault] of cases) {
      const sheet = pageFor(inputFor(circuit, complaint, fault));
      const text = textOf(sheet);
      expect(faultsOf(sheet), fault).toEqual([]);
      expect(wordsIn(text), fault).toBeLessThanOrEqual(MOST_WORDS);
      expect(designatorsIn(circuit, text), fault).toEqual([]);
      expect(text, fault).not.toMatch(/\bundefined\b|\bNaN\b/);
    }
  });

  test("puts names of the drawing that were typed into plain words", () => {
    expect(inPlainWords(vents, "Fitted new pins in the joint X32, pin X32-1 first, and mended the wire W16.")).toBe(
      "Fitted new pins in the middle roof joint, pin middle roof joint first, and mended the wire.",
    );
    const input = inputFor(vents, checkOf(vents, "middle-open-own"), "X32-1:corroded=20");
    expect(textOf(pageFor({ ...input, did: "New pins in X32, S5 kept, SP1.3 looked at." }))).toContain(
      "middle vent switch kept",
    );
  });

  test("shows the two sides of the found part as the solver has them, and the far side mended", () => {
    const input = inputFor(vents, checkOf(vents, "middle-open-own"), "X32-1:corroded=20");
    const { one, other, after, shown } = input.facts;
    expect(shown).toBe("sides");
    expect(one.value - other.value).toBeGreaterThan(10);
    expect(after.value).toBeGreaterThan(11.5);
    expect(wordsInCells(pageFor(input), "figure").join(" ")).toContain(`${other.value.toFixed(1)} V`);
  });

  test("prefers what was read before and after the repair", () => {
    const read = (text: string): Reading => {
      const reading = parseReading(vents, text);
      if (!reading.ok) throw new Error(reading.refusal.code);
      return reading.value;
    };
    const complaint = checkOf(vents, "middle-open-own");
    const found = possibleFaults(vents).find(({ id }) => id === "X32-1:corroded=20")!;
    const facts = handoverFacts({
      circuit: vents,
      complaint,
      found,
      readings: [read("X32-1b @ S1=on,S5=open : 0.83V"), read("X32-1b @ S1=on : 4V")],
      after: [read("X32-1b @ S1=on,S5=open : 12.01V")],
    });
    if (!facts.ok) throw new Error(facts.refusal.code);
    expect(facts.value.one.isRead).toBe(false);
    expect(facts.value.other).toEqual({ value: 0.83, unit: "V", isRead: true });
    expect(facts.value.after).toEqual({ value: 12.01, unit: "V", isRead: true });
  });

  test("refuses more than 240 words", () => {
    const input = inputFor(vents, checkOf(vents, "middle-open-own"), "M3:open");
    const did = Array.from({ length: 220 }, () => "and").join(" ");
    expect(handoverSheets({ ...input, did })).toMatchObject({ ok: false, refusal: { code: "handover-words" } });
  });
});

describe("the proof-run sheet", () => {
  test.each(SAMPLE_NAMES)("of suspects of %s is laid out without a fault, with every row and check", (name) => {
    const circuit = sample(name);
    for (const [complaint, fault] of casesOf(circuit).filter((_, index) => index % trials(3, 6) === 0)) {
      const found = possibleFaults(circuit).find(({ id }) => id === fault)!;
      const proof = proofRun({ circuit, complaint, found });
      if (!proof.ok) throw new Error(proof.refusal.code);
      const sheets = proofSheets({ circuit, proof: proof.value });
      expect(sheets.flatMap(faultsOf), fault).toEqual([]);
      const rows = sheets.flatMap((sheet) => wordsInCells(sheet, "row"));
      expect(rows, fault).toEqual(proof.value.rows.map((_, index) => String(index + 1)));
      const text = sheets.map(textOf).join(" ").replaceAll(" ", "");
      for (const { check } of proof.value.checks) expect(text).toContain(check.label.replaceAll(" ", ""));
    }
  });
});

describe("what was found", () => {
  const complaint = { check: checkOf(vents, "middle-open-own"), word: "dead" } as const;

  test("is the fault that is named, or what the readings leave", () => {
    const named = foundBy(vents, complaint, {}, [{ target: "X32-1", mode: "corroded", value: 22 }]);
    expect(named.ok && named.value.found.id).toBe("X32-1:corroded=22");
    const open = foundBy(vents, complaint, {}, []);
    expect(open).toMatchObject({ ok: false, refusal: { code: "proof-none" } });
  });
});
