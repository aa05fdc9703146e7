import { capital } from "../base/capital.ts";
import type { PartId } from "../base/ids.ts";
import { type Outcome, ok } from "../base/outcome.ts";
import { PAPER_WORDS } from "../base/words/paper.ts";
import { STRAIGHT_WORDS as WORDS } from "../base/words/straight.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { conditionWords } from "../circuit/sheetCondition.ts";
import type { Drawing, Mark } from "../drawing/mark.ts";
import { gridUnitsOf } from "../drawing/scale.ts";
import { type Branch, type BranchControl, branchOf } from "../live/branch.ts";
import { otherPositions } from "../live/branchElsewhere.ts";
import { conditionText } from "../live/condition.ts";
import type { Fault } from "../live/fault.ts";
import { restVoltsOf } from "../live/restVolts.ts";
import type { Look } from "../parts/kind.ts";
import { circuitTitle } from "./facts.ts";
import { linesOf } from "./lines.ts";
import { SHEET } from "./page.ts";
import { sheetCode } from "./sheetCode.ts";
import { type HeadingFor, type OtherBranch, sectionsOf } from "./straightBand.ts";
import { type FaultSetting, faultMarks } from "./straightFault.ts";
import { type StraightFacts, straightFrame } from "./straightFrame.ts";
import { legendMarks } from "./straightLegend.ts";
import { middleLine } from "./straightMarks.ts";
import { type LaidBand, type LaidSheet, layOut } from "./straightPages.ts";
import { placeMarks } from "./straightPlaces.ts";
import { endMarksOf, headingMarks, type RowSetting, rowMarks } from "./straightRow.ts";
import { AT, STRAIGHT_TYPE as TYPE } from "./straightSize.ts";
import { ampsWords, branchWords, placeWords, planted, positionWords } from "./straightWords.ts";

/** What a straight branch is printed from. */
export interface StraightInput {
  readonly circuit: Circuit;
  readonly load: PartId;
  /** Counts where the load carries current in it; else the first function check does in which the load works. */
  readonly condition?: Condition;
  /** Planted at the right, beside the good branch. */
  readonly faults?: readonly Fault[];
  readonly look?: Look;
}

/**
 * The straight branch of a load on sheets: first its own line from battery + to battery −, then what lies beside it, then
 * what controls it. Refuses `branch-load` and `branch-no-current`.
 */
export function straightSheets(input: StraightInput): Outcome<readonly Drawing[]> {
  const { circuit, load, condition, faults = [] } = input;
  const good = branchOf(circuit, { load, ...(condition && { condition }) });
  if (!good.ok) return good;
  const withThem = faults.length === 0 ? null : branchOf(circuit, { load, condition: good.value.condition, faults });
  const faulty = withThem?.ok ? withThem.value : null;
  const sheets = layOut(sectionsOf(circuit, good.value, faulty, headingFor, elsewhere(circuit, good.value)));
  const look = input.look ?? "iec";
  const setting: RowSetting & FaultSetting = {
    faults,
    faulty,
    circuit,
    look,
    restVolts: restVoltsOf(circuit),
    hasFault: faulty !== null,
  };
  const facts = factsOf(input, good.value);
  const bodies = sheets.map((sheet) => bodyMarks(setting, sheet));
  const code = sheetCode([facts, bodies]);
  return ok(
    bodies.map((body, index): Drawing => {
      const number = { sheet: index + 1, sheets: bodies.length, code };
      return {
        width: gridUnitsOf(SHEET.width),
        height: gridUnitsOf(SHEET.height),
        title: `${facts.title}, ${PAPER_WORDS.footSheet} ${PAPER_WORDS.sheetOf(index + 1, bodies.length)}`,
        marks: [...straightFrame(facts, number), ...legendMarks(), ...body],
      };
    }),
  );
}

function factsOf({ circuit, load, faults = [] }: StraightInput, branch: Branch): StraightFacts {
  const page = circuit.placement.parts[load]?.page;
  const number = circuit.pages.findIndex(({ id }) => id === page) + 1;
  const text = conditionText(branch.condition);
  const check = circuit.checks.find((each) => each.load === load && conditionText(each.condition) === text);
  const label = circuit.parts.find(({ id }) => id === load)?.label;
  return {
    title: check?.label ?? WORDS.title(label === undefined ? load : `${load}, ${label}`),
    position: positionWords(circuit, branch),
    vehicle: circuit.vehicle ?? "",
    circuit: circuitTitle(circuit),
    page: number === 0 ? "" : `${number}`,
    branch: branchWords(circuit, branch),
    volts: restVoltsOf(circuit),
    amps: ampsWords(branch.goodAmps),
    fault: faults.length === 0 ? "" : planted(circuit, faults),
  };
}

const headingFor: HeadingFor = (of) => {
  if ("rows" in of) return { words: WORDS.beside(placeWords(of.from ?? ""), placeWords(of.to ?? "")), note: "" };
  const note =
    of.lines.length === 0 ? WORDS.nothingLeads : of.sort === "coil" && of.goodAmps > 0 ? ampsWords(of.goodAmps) : "";
  return { words: controlWords(of), note };
};

function controlWords({ sort, part, what, state, wanted }: BranchControl): string {
  const name = capital(what);
  if (sort === "coil") return WORDS.coil(part, name, state.replaceAll("-", " "));
  const words = WORDS.pin(part, capital(sort), what);
  return wanted === null ? words : `${words}, ${WORDS.mustBe(wanted)}`;
}

/** The branch of the same load in each other position in which other parts or wires carry its current. */
function elsewhere(circuit: Circuit, branch: Branch): readonly OtherBranch[] {
  return otherPositions(circuit, branch).flatMap(({ check }): readonly OtherBranch[] => {
    const other = branchOf(circuit, { load: branch.load, condition: check.condition });
    if (!other.ok) return [];
    const words = WORDS.elsewhere(check.label);
    const position = conditionWords(circuit, check.condition).join(" · ");
    return [{ branch: other.value, words, position: linesOf(position, TYPE.where, AT.right - AT.where) }];
  });
}

function bodyMarks(setting: RowSetting & FaultSetting, sheet: LaidSheet): readonly Mark[] {
  const rows = sheet.flatMap((laid) => bandMarks(setting, laid));
  return [...placeMarks(setting.circuit, sheet), ...rows];
}

function bandMarks(setting: RowSetting & FaultSetting, { band, top, bottom }: LaidBand): readonly Mark[] {
  switch (band.is) {
    case "heading":
      return headingMarks(band, bottom);
    case "note":
      return [middleLine(band.words, TYPE.where, AT.where, (top + bottom) / 2)];
    case "end":
      return endMarksOf(band, top, bottom);
    case "row":
      return [...rowMarks(setting, band, top, bottom), ...faultMarks(setting, band, top, bottom)];
  }
}
