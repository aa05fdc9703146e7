import { describe, expect, test } from "vitest";
import type { Drawing } from "../../core/drawing/mark.ts";
import { branchOf, loadsOf } from "../../core/live/branch.ts";
import { partsOf, wiresOf } from "../../core/live/branchRow.ts";
import { SHEET, type Sheet } from "../../core/paper/page.ts";
import { type StraightInput, straightSheets } from "../../core/paper/straight.ts";
import { SAMPLE_NAMES as SAMPLES, sample } from "../samples/onTheBench.ts";
import { faultsOf } from "./geometry.ts";

function sheetsOf(input: StraightInput): readonly Drawing[] {
  const sheets = straightSheets(input);
  if (!sheets.ok) throw new Error(`${input.load} was refused: ${sheets.refusal.code}`);
  return sheets.value;
}

/** A drawing as a sheet of one cell that fills it, so that it can be looked over like the others. */
function whole(drawing: Drawing): Sheet {
  const box = { x: 0, y: 0, width: SHEET.width, height: SHEET.height };
  return { ...drawing, cells: [{ name: "foot", box, marks: drawing.marks }] };
}

/** The letter of a load stands on a filled ring that hides the line below it. */
const HIDDEN_LINE = /^"[A-Z]" at .* crosses a line$/;

function wrongOn(drawing: Drawing): readonly string[] {
  return faultsOf(whole(drawing)).filter((fault) => !HIDDEN_LINE.test(fault));
}

function textsOf({ marks }: Drawing): readonly string[] {
  return marks.flatMap((mark) => (mark.mark === "text" ? [mark.text] : []));
}

describe.each(SAMPLES)("The straight branches of sample %s", (name) => {
  const circuit = sample(name);

  test("stand on their sheets: no type over type, over a line or off the edge", () => {
    for (const load of loadsOf(circuit))
      for (const look of ["iec", "na"] as const)
        for (const [index, sheet] of sheetsOf({ circuit, load, look }).entries())
          expect({ load, look, index, faults: wrongOn(sheet) }).toEqual({ load, look, index, faults: [] });
  });

  test("so they do with a fault beside them: the wire before the load cut", () => {
    for (const load of loadsOf(circuit)) {
      const good = branchOf(circuit, { load });
      if (!good.ok) throw new Error(load);
      const rows = good.value.lines[0]!.rows;
      const at = rows.findIndex((row) => row.is === "part" && row.isLoad);
      const wire = [...rows.slice(0, at).reverse(), ...rows].find((row) => row.is === "wire")!;
      const sheets = sheetsOf({ circuit, load, faults: [{ target: wire.name, mode: "open" }] });
      for (const sheet of sheets) expect(wrongOn(sheet)).toEqual([]);
      expect(sheets.flatMap(textsOf).some((text) => text === "open" || text === "here")).toBe(true);
    }
  });

  test("name every part and wire of every line", () => {
    for (const load of loadsOf(circuit)) {
      const branch = branchOf(circuit, { load });
      if (!branch.ok) throw new Error(load);
      const words = sheetsOf({ circuit, load }).flatMap(textsOf).join(" ");
      for (const id of branch.value.lines.flatMap((line) => [...partsOf(line), ...wiresOf(line)]))
        expect(words).toMatch(new RegExp(`\\b${id}\\b`));
    }
  });
});

describe("The middle vent's branch on paper", () => {
  const circuit = sample("1-roof-vents");
  const condition = { set: { S1: "on", S5: "open" } };
  const sheets = sheetsOf({ circuit, load: "M3", condition });
  const [first, second, third] = sheets;

  test("takes one sheet, and others for the relay's coil and for what carries its current in other positions", () => {
    expect(sheets).toHaveLength(3);
    const closing = "Other position: Middle vent closes from its own switch";
    expect(textsOf(second!)).toEqual(expect.arrayContaining(["Coil of K1: pulled in", "from F1.2", closing, "W14"]));
    const opening = "Other position: Middle vent opens from the master panel";
    expect(textsOf(third!)).toEqual(expect.arrayContaining([opening, "from F4.1", "F3", "W7", "W8"]));
  });

  test("says where each row stands on the drawing and leaves room for readings, but not beside a fault", () => {
    expect(textsOf(first!)).toEqual(expect.arrayContaining(["Read", "On page", "2 · F5"]));
    const beside = sheetsOf({ circuit, load: "M3", condition, faults: [{ target: "W16", mode: "open" }] });
    for (const word of ["Read", "On page", "2 · F5"]) expect(beside.flatMap(textsOf)).not.toContain(word);
  });

  test("says the position drawn, the shared parts, and the volts to battery −", () => {
    const words = textsOf(first!);
    expect(words.join(" ")).toMatch(
      /key ON · S5 held OPEN · S2 lock-out off · S2 middle rest · all plugs on · no fault/,
    );
    expect(words).toEqual(expect.arrayContaining(["to F3 15\u00A0A", "to S3, S4, S6", "OG/BK", "1 of 3"]));
    for (const volts of ["12.56", "12.51", "12.49", "12.30", "12.16", "0.52", "0.32", "0.06"])
      expect(words.join(" ")).toContain(`${volts} V`.replace(" ", "\u00A0"));
  });

  test("has the same code for the same branch, and another with a fault", () => {
    const codeOf = (sheet: Drawing) => textsOf(sheet).find((text) => /^[A-Z2-9]{4}$/.test(text));
    expect(codeOf(sheetsOf({ circuit, load: "M3", condition })[0]!)).toBe(codeOf(first!));
    const faulty = sheetsOf({ circuit, load: "M3", condition, faults: [{ target: "W16", mode: "open" }] });
    expect(codeOf(faulty[0]!)).not.toBe(codeOf(first!));
  });

  test("refuses what has no branch", () => {
    const refused = straightSheets({ circuit, load: "M99" });
    expect(refused.ok ? null : refused.refusal.code).toBe("branch-load");
  });
});

describe("A way that two lines share", () => {
  test("is drawn once: the strap beside the starter's ground is not drawn again for its coil", () => {
    const words = sheetsOf({ circuit: sample("3-starter"), load: "M1" }).flatMap(textsOf);
    expect(words.filter((word) => word === "W7")).toHaveLength(1);
    expect(words).toContain("to GP7.stud");
    expect(words).not.toContain("from GP7.stud");
  });
});

describe("A branch that an alternator feeds", () => {
  const words = sheetsOf({ circuit: sample("7-charging"), load: "G2" }).flatMap(textsOf);

  test("goes back to the alternator, and gives volts at rest of no alternator", () => {
    expect(words).toContain("body to GP4, W3, G2");
    expect(words.filter((text) => text.includes("at rest"))).toEqual(["at rest"]);
  });
});

describe("A line of more than twelve parts", () => {
  test("goes on on another sheet at a joint of the same letter", () => {
    const circuit = sample("6-truck-trailer");
    const long = loadsOf(circuit).map((load) => sheetsOf({ circuit, load }).map((sheet) => textsOf(sheet).join(" ")));
    const cut = long.filter((sheets) => sheets.some((words) => words.includes("Joint A")));
    for (const sheets of cut) {
      const at = sheets.findIndex((words) => words.includes("Joint A"));
      expect(sheets[at]).toMatch(new RegExp(`Joint A.*on sheet ${at + 2}`));
      expect(sheets[at + 1]).toMatch(new RegExp(`Joint A.*from sheet ${at + 1}`));
    }
    expect(cut.length).toBeGreaterThan(0);
  });
});
