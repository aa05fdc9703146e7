import { describe, expect, test } from "vitest";
import { probeOrder } from "../../core/diagnose/order.ts";
import { checklistSheets } from "../../core/paper/checklist.ts";
import { withOwnWords } from "../../core/paper/ownWords.ts";
import type { CodedSheet } from "../../core/paper/page.ts";
import { sample } from "../samples/onTheBench.ts";
import { faultsOf, wordsIn } from "./geometry.ts";

const circuit = sample("4-horn");
const check = circuit.checks.find(({ id }) => id === "low-horn")!;
const plain = checklistSheets({ circuit, order: probeOrder(circuit, { check, word: "dead" }) });

describe("the head of a print", () => {
  test("has this vehicle and who works on it, and the code and every row as they were", () => {
    const filled = withOwnWords(plain, { vehicle: "B-AD 1234", technician: "Ann Lee" }) as readonly CodedSheet[];
    expect(wordsIn(filled[0]!, "Technician").join(" ")).toContain("Ann Lee");
    expect(wordsIn(filled[0]!, "Vehicle").join(" ")).toContain("B-AD 1234");
    expect(filled.flatMap(faultsOf)).toEqual([]);
    expect(filled.map(({ code }) => code)).toEqual(plain.map(({ code }) => code));
    expect(filled[0]!.marks.slice(0, plain[0]!.marks.length)).toEqual(plain[0]!.marks);
    expect(filled.slice(1)).toEqual(plain.slice(1));
  });

  test("cuts what is too long for its line, and leaves what is not said to be written by hand", () => {
    const long = withOwnWords(plain, { vehicle: "V".repeat(200), technician: "W".repeat(60) }) as readonly CodedSheet[];
    expect(long.flatMap(faultsOf)).toEqual([]);
    expect(wordsIn(long[0]!, "Technician").join(" ")).toContain("…");
    expect(withOwnWords(plain, { vehicle: " ", technician: "" })).toBe(plain);
  });
});
