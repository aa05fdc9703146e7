import type { PartId } from "../base/ids.ts";
import { terminalPoint } from "../circuit/points.ts";
import type { NodeIndex } from "../solve/element.ts";
import { pathsOf } from "./branchPaths.ts";
import type { BranchControl, BranchEnd, BranchLine, BranchPart } from "./branchRow.ts";
import { type RowField, rowsOf } from "./branchRows.ts";
import type { Currents, Way } from "./branchWays.ts";
import type { Placed, PlacedPart } from "./network.ts";
import { traceTo } from "./trace.ts";

/** What finds the lines of a control: the currents, and how a path becomes a line. */
export interface ControlField {
  readonly currents: Currents;
  readonly rows: RowField;
  readonly linesOf: (part: PartId, field: RowField) => readonly BranchLine[];
}

/**
 * What controls the contacts of some lines besides hands: coils with their own feed and return, pins of modules. Then what
 * controls those, each part once.
 */
export function controlsOfLines(
  field: ControlField,
  lines: readonly BranchLine[],
  told: Set<PartId> = new Set(),
): readonly BranchControl[] {
  const passed = lines.flatMap(({ rows }) => rows.flatMap((row) => (row.is === "part" ? [row] : [])));
  return passed.flatMap((row): readonly BranchControl[] => {
    const placed = field.currents.rig.network.parts.get(row.part);
    if (!placed || row.contacts.length === 0 || told.has(row.part)) return [];
    told.add(row.part);
    const own = placed.kind.role === "electronics" ? modulePins(field, placed, row) : coils(field, placed, row);
    return [...own, ...own.flatMap((control) => controlsOfLines(field, control.lines, told))];
  });
}

// ---------------------------------------------------------------- coils

/** Loads inside a part that moves by itself: a relay's coil, the electronics of a flasher. */
function coils(field: ControlField, placed: PlacedPart, { state }: BranchPart): readonly BranchControl[] {
  const { rig } = field.currents;
  const { kind, elements } = placed;
  if (kind.role !== "control" || kind.start === "") return [];
  const loads = [...elements].filter(([, index]) => rig.network.elements[index]!.passes === "load");
  const apart = loads.filter(([, index], at) => {
    const { a, b } = rig.network.elements[index]!.element;
    return !loads.slice(0, at).some(([, other]) => {
      const before = rig.network.elements[other]!.element;
      return before.a === a && before.b === b;
    });
  });
  return apart.map(([what, index]) => coil(field, placed, what, rig.network.elements[index]!, state, index));
}

function coil(
  field: ControlField,
  { part }: PlacedPart,
  what: string,
  placed: Placed,
  state: string,
  index: number,
): BranchControl {
  const { currents, rows } = field;
  const goodAmps = Math.abs(currents.rig.solver.amps(index));
  const { a, b } = placed.element;
  const own: RowField = { ...rows, load: part.id, work: new Set([placed]) };
  const flowing = pathsOf(currents, part.id)?.work.some((way) => way.placed === placed);
  const lines = flowing
    ? field.linesOf(part.id, own)
    : [...traced(field, own, a, "feed"), ...traced(field, own, b, "return")];
  const pin = endAt(rows, a);
  return { part: part.id, what, sort: "coil", state, wanted: null, pin, goodAmps: flowing ? goodAmps : 0, lines };
}

// ---------------------------------------------------------------- modules

/**
 * The pins a module looks at before it closes these contacts: its supply, its ground, and the inputs of the rows of its
 * table that close them now.
 */
function modulePins(field: ControlField, placed: PlacedPart, row: BranchPart): readonly BranchControl[] {
  const { part, view } = placed;
  const joined = (part.table ?? []).filter(({ joins }) =>
    joins.some(([a, b]) => row.contacts.includes(`${a}-${b}`) || row.contacts.includes(`${b}-${a}`)),
  );
  const isHigh = (pin: string): boolean => {
    const volts = field.rows.good(field.currents.rig.network.nodes.get(terminalPoint(part, pin))!).volts;
    return (volts ?? 0) > view.nominalVolts / 2;
  };
  const holding = joined.filter(({ when }) =>
    Object.entries(when).every(([pin, level]) => (level === "high") === isHigh(pin)),
  );
  const wanted = new Map((holding.length > 0 ? holding : joined).flatMap(({ when }) => Object.entries(when)));
  return view.terminals.flatMap((pin): readonly BranchControl[] => {
    const role = part.pins?.[pin];
    const isPassed = row.terminals.includes(pin);
    if (role === "ground" && !isPassed) return [modulePin(field, placed, pin, "ground", null, row.state)];
    if (role === "supply" && !isPassed) return [modulePin(field, placed, pin, "supply", null, row.state)];
    const level = wanted.get(pin);
    return level === undefined ? [] : [modulePin(field, placed, pin, "input", level, row.state)];
  });
}

function modulePin(
  field: ControlField,
  { part }: PlacedPart,
  what: string,
  sort: "supply" | "ground" | "input",
  wanted: "high" | "low" | null,
  state: string,
): BranchControl {
  const { rows, currents } = field;
  const node = currents.rig.network.nodes.get(terminalPoint(part, what))!;
  const own: RowField = { ...rows, load: part.id, work: new Set() };
  const side = sort === "ground" || wanted === "low" ? "return" : "feed";
  return {
    part: part.id,
    what,
    sort,
    state,
    wanted,
    pin: endAt(rows, node),
    goodAmps: 0,
    lines: traced(field, own, node, side),
  };
}

// ---------------------------------------------------------------- ways without current

/** The shortest firm way from a feed to a node, or from it to the return, as a line; none where there is none. */
function traced(
  { currents }: ControlField,
  rows: RowField,
  node: NodeIndex,
  side: "feed" | "return",
): readonly BranchLine[] {
  const { rig } = currents;
  const posts = new Set<NodeIndex>();
  rig.network.elements.forEach(({ passes, element }, index) => {
    if (passes === "source" && !rig.isOpen[index]) posts.add(element.a);
  });
  const trace = traceTo(rig, node, side === "feed" ? posts : new Set([0]), side === "feed" ? "away" : "towards", false);
  if (!trace || trace.length === 0) return [];
  const ways: Way[] = [];
  let at = node;
  for (const placed of trace) {
    const far = placed.element.a === at ? placed.element.b : placed.element.a;
    if (placed.element.law !== "joint") ways.push({ placed, from: at, to: far, amps: 0 });
    at = far;
  }
  const inOrder =
    side === "feed" ? ways.reverse().map(({ placed, from, to }) => ({ placed, from: to, to: from, amps: 0 })) : ways;
  if (inOrder.length === 0) return [];
  const line = rowsOf(
    rows,
    inOrder,
    inOrder.map(() => 0),
    new Set(inOrder.map(({ placed }) => placed)),
  );
  return [{ rows: line, from: null, to: null }];
}

function endAt({ names, shown, good }: RowField, node: NodeIndex): BranchEnd {
  const name = names[node]!;
  const healthy = good(node);
  const live = shown.points.get(name);
  return { point: name, state: live?.state ?? healthy.state, volts: live?.volts ?? null, goodVolts: healthy.volts };
}
