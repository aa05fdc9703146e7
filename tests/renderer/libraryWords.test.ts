import { describe, expect, test } from "vitest";
import {
  besideWords,
  circuitFacts,
  copyTitle,
  deletedWords,
  fileNameFor,
  isLesson,
  lessonFacts,
  lessonOf,
  shownTitle,
  sinceWords,
} from "../../renderer/words/library.ts";
import { changedByOther, keptBeside, notKept } from "../../renderer/words/saving.ts";
import { windowTitle } from "../../renderer/words/windowTitle.ts";
import { FILE_ENDINGS } from "../../schemas/calls/files.ts";
import { VENTS } from "../edit/given.ts";
import { openAfter } from "./stage.ts";

/** A space that does not break is set between a figure and its unit; here it is written as `_`. */
const plain = (words: string): string => words.replaceAll("\u00A0", "_");

describe("the library", () => {
  const row = {
    id: "c1",
    title: "Horn",
    vehicle: "",
    pages: 1,
    parts: 3,
    wires: 4,
    scenes: 0,
    questions: 0,
    exercises: [],
    problems: 0,
    looseEnds: 0,
    version: 1,
    made: "",
    edited: "",
    opened: null,
    removed: null,
    beside: null,
  };

  test("how far a circuit is drawn", () => {
    expect(plain(circuitFacts(row))).toBe("1_page, no loose ends");
    expect(plain(circuitFacts({ ...row, pages: 4, problems: 1, looseEnds: 2 }))).toBe(
      "4_pages, 1_problem, 2_loose ends",
    );
  });

  test("who kept one beside another", () => {
    expect(besideWords(row)).toBeNull();
    expect(besideWords({ ...row, beside: "ann" })).toBe("Kept beside by ann");
    expect(besideWords({ ...row, beside: "" })).toBe("Kept beside another");
  });

  test.each([
    ["2026-03-12T10:00:00Z", "just now"],
    ["2026-03-12T09:56:00Z", "5_min ago"],
    ["2026-03-12T07:00:00Z", "3_h ago"],
    ["2026-03-11T09:00:00Z", "yesterday"],
    ["2026-03-01T10:00:00Z", "1 March 2026"],
    ["2026-03-12T10:05:00Z", "just now"],
    ["never", ""],
  ])("%s was %s", (edited, words) => {
    expect(plain(sinceWords(edited, Date.parse("2026-03-12T10:01:00Z")))).toBe(words);
  });

  test("a deleted one says since when, and until when it can be brought back", () => {
    const now = Date.parse("2026-03-12T10:01:00Z");
    const words = (removed: string | null) => plain(deletedWords({ removed }, now));
    expect(words("2026-03-12T09:31:00Z")).toBe("Deleted 30_min ago, kept until 11 April 2026");
    expect([words(null), words("some day")]).toEqual(["Deleted", "Deleted"]);
  });

  test("a title in which nothing can be seen is none", () => {
    for (const title of ["", "  \n", "\u200b\u202e"]) expect(shownTitle(title)).toBe("Circuit without a title");
    expect(windowTitle("")).toBe("Circuit without a title – Wirefathom");
    expect(shownTitle("12")).toBe("12");
  });

  test("a copy has a title of its own, and keeps to the length of one", () => {
    expect(copyTitle("Horns")).toBe("Horns (copy)");
    expect(copyTitle("Horns (copy)")).toBe("Horns (copy 2)");
    expect(copyTitle("Horns (copy 9)")).toBe("Horns (copy 10)");
    expect(copyTitle("x".repeat(160))).toBe(`${"x".repeat(153)} (copy)`);
  });

  test("a lesson says what it brings; a sample that asks nothing is none", () => {
    const lesson = { ...row, sample: "10-power-and-ground", scenes: 7, questions: 12, exercises: ["a.1", "a.2"] };
    expect(plain(lessonFacts(lesson))).toBe("7_scenes, 12_questions, 2_hidden faults");
    expect(plain(lessonFacts({ ...lesson, scenes: 1, questions: 1, exercises: [] }))).toBe("1_scene, 1_question");
    expect([isLesson(lesson), isLesson({ ...lesson, questions: 0 })]).toEqual([true, false]);
  });

  test("what a sample teaches, else its vehicle", () => {
    expect(lessonOf({ ...row, sample: "3-starter" })).toBe("Coil, contact, heavy cable");
    expect(lessonOf({ ...row, sample: "none", vehicle: "A van" })).toBe("A van");
  });

  test.each([
    ["Roof vents", "Roof vents.circuit.json"],
    ["../a\\b:c*?", "a b c.circuit.json"],
    [".hidden", "hidden.circuit.json"],
    ["Wischer für Ähre, 2019", "Wischer für Ähre, 2019.circuit.json"],
    ["???", "circuit.circuit.json"],
    ["CON", "CON circuit.circuit.json"],
    ["lpt1.", "lpt1 circuit.circuit.json"],
    ["x".repeat(300), `${"x".repeat(80)}.circuit.json`],
  ])("the file of %s", (title, name) => {
    expect(fileNameFor({ title })).toBe(name);
    expect(FILE_ENDINGS.some((ending) => name.endsWith(`.${ending}`))).toBe(true);
  });

  test("a title that is written from the right, or turns the writing about, keeps to itself in the window's", () => {
    expect(windowTitle("Roof vents – 2019")).toBe("Roof vents – 2019 – Wirefathom");
    for (const title of ["צופר", "بوق 12V", "Horn \u202Egpj.exe"])
      expect(windowTitle(title)).toBe(`\u2068${title}\u2069 – Wirefathom`);
    expect(windowTitle("Horn\u2069 \u202Egpj")).toBe("\u2068Horn \u202Egpj\u2069 – Wirefathom");
  });

  test("what was changed twice at once names the other and leads to it; one that was deleted leads nowhere", () => {
    const open = openAfter(VENTS);
    const meanwhile = { by: "ann", saved: "2026-03-12T10:01:00Z", isRemoved: false };
    const told = keptBeside(open, "other", meanwhile);
    expect(told).toMatchObject({ title: "Roof vents was changed twice at once.", isError: false });
    expect(told.words).toMatch(/^ann changed it too, at \d\d:\d\d\. Nothing is lost/);
    expect(told.offers?.map(({ action }) => action)).toEqual([{ do: "open-circuit", id: "other" }]);
    expect(keptBeside(open, "other", { ...meanwhile, isRemoved: true }).offers).toBeUndefined();
    expect(changedByOther(open, { ...meanwhile, by: "" }).title).toMatch(
      /^Another window changed Roof vents at \d\d:\d\d\.$/,
    );
    expect(changedByOther(open, meanwhile).offers?.map(({ action }) => action)).toEqual([
      { do: "open-circuit", id: open.id },
    ]);
    expect(changedByOther(open, { ...meanwhile, isRemoved: true }).title).toBe("Roof vents was deleted elsewhere.");
  });

  test("what is not kept is told with its reason, and a copy is offered where nothing else helps", () => {
    const open = openAfter(VENTS);
    expect(notKept(open, null, false)).toEqual({
      title: "Your last changes to Roof vents are not kept yet.",
      words: "The program behind this page does not answer; it is asked again until it does.",
      isError: true,
      isUntilKept: true,
      offers: [{ words: "Save a copy to a file", action: { do: "save-file" } }],
    });
    expect(notKept(open, { code: "circuit-changed-elsewhere", about: {} }, true)).toMatchObject({
      words: "This circuit was changed in another window; open it again, or keep yours as a copy.",
      offers: [
        { words: "Keep mine as a copy", action: { do: "keep-as-copy" } },
        { words: "Open it again", action: { do: "open-circuit" } },
      ],
    });
    const { offers } = notKept(open, { code: "circuit-unknown", about: {} }, true);
    expect(offers?.map(({ words }) => words)).toEqual(["Keep mine as a copy"]);
  });
});
