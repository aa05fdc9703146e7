import type { Amps, Volts } from "../base/units.ts";
import { PART_STATE_WORDS } from "../base/words/sheet.ts";
import { STRAIGHT_WORDS as WORDS } from "../base/words/straight.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { controlAt, partAt } from "../circuit/points.ts";
import { printedPosition } from "../circuit/positionWords.ts";
import { conditionWords } from "../circuit/sheetCondition.ts";
import type { Branch, BranchControl, BranchLine, BranchPart, BranchRow } from "../live/branch.ts";
import { apartFrom, carriersOf, partsOf } from "../live/branchRow.ts";
import type { Tap } from "../live/branchTaps.ts";
import type { Fault } from "../live/fault.ts";
import { faultTitle } from "../live/fault.ts";
import { kindOf } from "../parts/catalogue.ts";
import { viewOf } from "../parts/view.ts";
import { plainNumber } from "./range.ts";
import type { RowBand } from "./straightBand.ts";

/** Volts of a row to two decimals, with a true minus; a ring's word where it floats. */
export function rowVolts(volts: Volts | null): string {
  if (volts === null) return "floats";
  const figure = volts.toFixed(2);
  return `${Number(figure) === 0 ? "0.00" : figure.replace("-", "−")}\u00A0V`;
}

/** Amps with as many figures as help. */
export function ampsWords(amps: Amps): string {
  return amps < 1 ? `${Math.round(amps * 1000)}\u00A0mA` : `${amps.toFixed(amps < 100 ? 1 : 0)}\u00A0A`;
}

/** A part's label, or what it is, with the rating of a fuse. */
export function aboutPart(circuit: Circuit, id: string): string {
  const part = partAt(circuit, id);
  const kind = part && kindOf(part.kind);
  if (!part || !kind) return "";
  const rating =
    kind.role === "protection" ? ` ${plainNumber(viewOf(kind, part, circuit.nominalVolts).number("amps"))}\u00A0A` : "";
  return `${part.label ?? kind.title}${rating}`;
}

/** The second line of a part: where it stands, and what holds it there. */
export function aboutRow(circuit: Circuit, band: RowBand): string {
  const { row } = band;
  if (row.is !== "part") return "";
  if (row.isLoad && row.contacts.length === 0) return WORDS.running(ampsWords(row.goodAmps));
  const said = [standing(row), ...closedBy(circuit, band.controls, band.branch)].filter((word) => word !== "");
  return said.join(", ");
}

function standing({ controls, contacts, isRest, state }: BranchPart): string {
  const positions = controls.map(({ name, position, rest, isHeld }) => {
    const word = position === rest && position === "rest" ? WORDS.restPlace : position.replaceAll("-", " ");
    const still = isRest && contacts.length > 0 ? `, ${WORDS.asAtRest}` : "";
    const thrown = position === rest ? word : `${isHeld ? `${WORDS.held} ` : ""}${printedPosition(position)}${still}`;
    return name === "" ? thrown : `${name} ${thrown}`;
  });
  if (positions.length > 0) return positions.join(", ");
  return isRest ? "" : (PART_STATE_WORDS[state] ?? "");
}

function closedBy(circuit: Circuit, controls: readonly BranchControl[], branch: Branch): readonly string[] {
  const inputs = controls.filter(({ sort }) => sort === "input");
  if (inputs.length > 0)
    return [WORDS.closedBy(inputs.map(({ what, wanted }) => WORDS.level(what, wanted ?? "")).join(", "))];
  return controls.flatMap((control) => {
    if (control.goodAmps === 0) return [];
    const by = feedParts(control, branch)
      .map((id) => partAt(circuit, id))
      .filter((part) => part !== undefined && kindOf(part.kind)?.role === "control")
      .map((part) => part!.id);
    return by.length > 0 ? [`by ${by.join(", ")}`] : [];
  });
}

/** The parts of a control's feed that the branch does not have itself, in the order of its current; its own part left out. */
export function feedParts(control: BranchControl, { lines }: Branch): readonly string[] {
  return sideOf(control, lines, "feed");
}

/** The parts and the ground point of its return. */
export function returnParts(control: BranchControl, { lines }: Branch): readonly string[] {
  return sideOf(control, lines, "return");
}

function sideOf(control: BranchControl, lines: readonly BranchLine[], side: "feed" | "return"): readonly string[] {
  const line = control.lines[0];
  if (!line) return [];
  const { rows } = apartFrom(line, carriersOf(lines));
  const at = rows.findIndex((row) => row.is === "part" && row.part === control.part);
  if (at < 0) return [];
  const part = side === "feed" ? rows.slice(0, at) : rows.slice(at + 1);
  const named = part.flatMap((row): readonly string[] => {
    if (row.is === "part") return [row.part];
    return row.is === "ground" && row.exit.point === null ? [row.part] : [];
  });
  const ends = part.at(-1)?.exit.point;
  const stud = side === "return" && named.length === 0 && ends ? [ends.replace(/\.[^.]+$/, "")] : [];
  return [...new Set([...named, ...stud])];
}

/** What a part's symbol says at one of its ends: the place of a plug where it has one, else the terminal. */
export function endText(row: BranchPart, end: 0 | 1): string {
  const point = (end === 0 ? row.entry : row.exit).point;
  const terminal = row.terminals[end].replace(/^-$/, "−");
  return point?.includes("-") && !point.startsWith(`${row.part}.`) ? point : terminal;
}

/** Where a line parts or joins, in words: a battery's post with its sign. */
export function placeWords(name: string): string {
  return name.replace(/\.-$/, " −").replace(/\.\+$/, " +");
}

const MOST_TAPPED = 7;

/** What hangs on a place in one line: "to F3", "W9 to S1"; with ratings of fuses where there is but one. */
export function tapText(circuit: Circuit, taps: readonly Tap[]): string {
  const ids = [...new Set(taps.flatMap(({ to }) => to))];
  const [only] = ids;
  if (ids.length === 1 && only !== undefined) {
    const part = partAt(circuit, only);
    const isFuse = part !== undefined && kindOf(part.kind)?.role === "protection";
    return `${WORDS.to} ${only}${isFuse ? ` ${aboutPart(circuit, only).replace(/^.* (?=[\d.]+\u00A0A$)/, "")}` : ""}`;
  }
  const more = ids.length - MOST_TAPPED;
  return `${WORDS.to} ${ids.slice(0, MOST_TAPPED).join(", ")}${more > 0 ? ` + ${more}` : ""}`;
}

/** The banner: everything off its rest, then the controls of the branch that stand at rest, plugs and faults. */
export function positionWords(circuit: Circuit, branch: Branch): readonly string[] {
  const { condition } = branch;
  const off = Object.keys(condition.set ?? {}).length === 0 ? [] : conditionWords(circuit, condition);
  const other =
    Object.keys(condition).some((field) => field !== "set") && off.length === 0
      ? conditionWords(circuit, condition)
      : [];
  const rows = [...branch.lines, ...branch.controls.flatMap(({ lines }) => lines)].flatMap((line) => line.rows);
  const resting = new Map<string, string>();
  for (const row of rows)
    if (row.is === "part")
      for (const { key, name, position, rest } of row.controls) {
        if (position !== rest) continue;
        const control = controlAt(circuit, key);
        if (control && control.control.positions.length < 2) continue;
        resting.set(key, `${row.part} ${name === "" ? "" : `${name.toLowerCase()} `}${rest.replaceAll("-", " ")}`);
      }
  const plugs = (condition.apart ?? []).length === 0 ? [WORDS.plugsOn] : [];
  return [...off, ...other, ...resting.values(), ...plugs, WORDS.noFault];
}

/** "G1 to GP2 by S5, M3, S2": the ends of the branch, and the controls and the load between. */
export function branchWords(circuit: Circuit, { lines }: Branch): string {
  const [main] = lines;
  if (!main) return "";
  const [first] = partsOf(main);
  const ground = main.rows.find((row) => row.is === "ground" && row.entry.point !== null);
  const last = ground && ground.is === "ground" ? ground.part : WORDS.toBattery;
  const by = main.rows.flatMap((row: BranchRow): readonly string[] => {
    if (row.is !== "part") return [];
    const role = kindOf(partAt(circuit, row.part)?.kind ?? "")?.role;
    return row.isLoad || role === "control" || role === "electronics" ? [row.part] : [];
  });
  return WORDS.fromTo(first ?? "", last, [...new Set(by)].join(", "));
}

/** What the right side shows: the fault in words, or how many. */
export function planted(circuit: Circuit, faults: readonly Fault[]): string {
  const [fault] = faults;
  return fault && faults.length === 1 ? WORDS.ifFault(faultTitle(circuit, fault)) : WORDS.withFaults(faults.length);
}
