import type { PartId, PointId } from "../base/ids.ts";
import type { WireState } from "../base/states.ts";
import type { Amps, Volts } from "../base/units.ts";
import { controlsOf, partOfPoint, springsBack, terminalPoint } from "../circuit/points.ts";
import type { PartView } from "../parts/kind.ts";
import type { NodeIndex } from "../solve/element.ts";
import type { BranchControlPosition, BranchEnd, BranchLink, BranchPart, BranchRow, BranchWire } from "./branchRow.ts";
import { type TapField, tapsAt } from "./branchTaps.ts";
import type { Way } from "./branchWays.ts";
import type { Live } from "./live.ts";
import type { Placed, PlacedPart } from "./network.ts";

/** What rows are made with: where everything is, the good circuit as it was solved, and what is to be shown. */
export interface RowField extends TapField {
  readonly shown: Live;
  readonly good: (node: NodeIndex) => { readonly state: WireState; readonly volts: Volts | null };
  readonly load: PartId;
  /** Elements that do the load's work. */
  readonly work: ReadonlySet<Placed>;
}

/** Ways of one owner that follow one another. */
interface Run {
  readonly owner: string;
  readonly ways: readonly Way[];
  readonly shares: readonly Amps[];
}

/** The rows of a path. `line` holds the elements of all paths: what hangs on them besides is told. */
export function rowsOf(
  field: RowField,
  ways: readonly Way[],
  shares: readonly Amps[],
  line: ReadonlySet<Placed>,
): readonly BranchRow[] {
  const runs = runsOf(field, ways, shares);
  return runs.flatMap((run, index): readonly BranchRow[] => {
    const next = runs[index + 1];
    const taps = [...innerTaps(field, run, line), ...exitTaps(field, run, next, line)];
    const row = { ...rowOf(field, run, `${index}`), taps };
    const link = next ? linkBetween(field, run, next, row.id) : null;
    const joint = link ?? (next ? studBetween(field, run, next, row) : null);
    return joint ? [row, joint] : [row];
  });
}

function runsOf(field: RowField, ways: readonly Way[], shares: readonly Amps[]): readonly Run[] {
  const runs: { owner: string; ways: Way[]; shares: Amps[] }[] = [];
  ways.forEach((way, index) => {
    const owner = ownerOf(field, way);
    const last = runs.at(-1);
    if (last?.owner === owner) {
      last.ways.push(way);
      last.shares.push(shares[index]!);
    } else runs.push({ owner, ways: [way], shares: [shares[index]!] });
  });
  return runs;
}

/** A plug's pin belongs to the part whose terminal it carries. */
function ownerOf({ rig, names }: RowField, { placed, from, to }: Way): string {
  if (rig.network.wires.has(placed.owner) || rig.network.parts.has(placed.owner)) return placed.owner;
  const terminal = [from, to].map((node) => names[node]!).find((name) => name.includes(".")) ?? "";
  return terminal.slice(0, terminal.lastIndexOf("."));
}

/** The stud on which two wires of the line meet, though the current does not pass its part; null between any other rows. */
function studBetween({ rig }: RowField, run: Run, next: Run, row: BranchWire | BranchPart): BranchPart | null {
  const { wires } = rig.network;
  const { point } = row.exit;
  if (point === null || !wires.has(run.owner) || !wires.has(next.owner)) return null;
  const on = partOfPoint(rig.circuit, point);
  if (!on) return null;
  const [part, terminal] = [on.part.id, on.terminal];
  return {
    id: `${row.id}s`,
    is: "splice",
    name: part,
    part,
    entry: row.exit,
    exit: row.exit,
    goodAmps: row.goodAmps,
    share: row.share,
    taps: [],
    terminals: [terminal, terminal],
    contacts: [],
    isClosed: null,
    isRest: true,
    restTerminal: null,
    controls: [],
    state: "",
    isLoad: false,
  };
}

// ---------------------------------------------------------------- rows

function rowOf(field: RowField, { ways, shares }: Run, id: string): BranchWire | BranchPart {
  const [first, last] = [ways[0]!, ways.at(-1)!];
  const entry = endOf(field, first.from);
  const exit = endOf(field, last.to);
  const most = ways.reduce((best, way, index) => (way.amps > ways[best]!.amps ? index : best), 0);
  const name = ownerOf(field, first);
  const any = { id, name, entry, exit, goodAmps: ways[most]!.amps, share: shares[most]!, taps: [] };
  const { owner } = first.placed;
  if (field.rig.network.wires.has(owner)) return wireRow(field, first, any);
  return partRow(field, ways, any);
}

type Any = Pick<BranchWire, "id" | "name" | "entry" | "exit" | "goodAmps" | "share" | "taps">;

function wireRow({ rig, shown, names }: RowField, way: Way, any: Any): BranchWire {
  const { owner } = way.placed;
  const wire = rig.circuit.wires.find(({ id }) => id === owner)!;
  const isBack = names[way.from] !== wire.from;
  const live = shown.wires.get(owner);
  const [entry, exit] = isBack ? [1, 0] : [0, 1];
  const at = (end: BranchEnd, side: 0 | 1): BranchEnd =>
    live ? { ...end, state: live.state[side], volts: live.volts[side] } : end;
  return {
    ...any,
    is: "wire",
    wire: owner,
    isBack,
    amps: (isBack ? -1 : 1) * (live?.amps ?? 0),
    entry: at(any.entry, entry as 0 | 1),
    exit: at(any.exit, exit as 0 | 1),
  };
}

function partRow(field: RowField, ways: readonly Way[], any: Any): BranchPart {
  const { rig, shown } = field;
  const own = ways.filter(({ placed }) => rig.network.parts.has(placed.owner));
  const carried = own[0] ?? ways[0]!;
  const placed = rig.network.parts.get(ownerOf(field, carried))!;
  const { part, kind, view } = placed;
  const contacts =
    kind.role === "source" ? [] : own.filter((way) => way.placed.passes === "contact").map((way) => way.placed.key);
  const now = shown.parts.get(part.id);
  const atRest = restContacts(placed, rig.circuit.nominalVolts);
  const named = ways.flatMap(({ from, to }) => [from, to]).map((node) => terminalAt(field, view, node));
  const passed = named.filter((terminal) => terminal !== "");
  const terminals = [passed[0] ?? "", passed.at(-1) ?? ""] as const;
  const place = kind.role === "join" ? joinSort(field, own) : "part";
  return {
    ...any,
    is: place,
    name: place === "inline" ? `${part.id}-${own[0]!.placed.key}` : part.id,
    part: part.id,
    terminals,
    contacts,
    isClosed: contacts.length === 0 ? null : contacts.every((key) => now?.closed.has(key) ?? false),
    isRest: contacts.every((key) => atRest.has(key)),
    restTerminal: restTerminal(placed, contacts, atRest),
    controls: contacts.length === 0 ? [] : controlsFor(field, part.id, contacts),
    state: now?.state ?? "",
    isLoad: own.some((way) => field.work.has(way.placed)),
  };
}

function joinSort({ names }: RowField, ways: readonly Way[]): BranchPart["is"] {
  const nodes = ways.flatMap(({ from, to }) => [names[from]!, names[to]!]);
  if (nodes.some((name) => name.startsWith("=body"))) return "ground";
  return nodes.some((name) => name.includes("~")) ? "splice" : "inline";
}

/** Name of the terminal at a node; "" inside a part or at a body. */
function terminalAt({ names }: RowField, view: PartView, node: NodeIndex): string {
  return view.terminals.find((terminal) => names[node] === terminalPoint(view.part, terminal)) ?? "";
}

/** What the place at a node is called: its point, a splice, or the body. */
export function placeName({ names }: RowField, node: NodeIndex): string {
  const name = names[node]!;
  if (name.startsWith("=body:")) return name.slice("=body:".length);
  return name.includes("~") ? name.slice(0, name.indexOf("~")) : name;
}

function endOf({ names, shown, good }: RowField, node: NodeIndex): BranchEnd {
  const name = names[node]!;
  const point: PointId | null = name.includes("~") || name.startsWith("=") ? null : name;
  const healthy = good(node);
  const live = point === null ? undefined : shown.points.get(point);
  return {
    point,
    state: live?.state ?? healthy.state,
    volts: live ? live.volts : healthy.volts,
    goodVolts: healthy.volts,
  };
}

// ---------------------------------------------------------------- contacts

/** Contacts that are closed with every control at rest and nothing pulled in. */
function restContacts({ kind, view }: PlacedPart, nominalVolts: Volts): ReadonlySet<string> {
  const positions = Object.fromEntries(view.controls.map(({ name, positions: [rest] }) => [name, rest?.name ?? ""]));
  const around = { positions, drive: {}, engineRunning: false, ambientC: 20, nominalVolts };
  return new Set(kind.closed(view, kind.start, around));
}

/** The other terminal of the contact that is closed at rest on a terminal whose contact has moved away. */
function restTerminal({ view }: PlacedPart, contacts: readonly string[], atRest: ReadonlySet<string>): string | null {
  const [key = ""] = contacts;
  if (contacts.length !== 1 || atRest.has(key)) return null;
  const ends = view.terminals.flatMap((a) => view.terminals.map((b) => [a, b] as const));
  const of = (wanted: string) => ends.find(([a, b]) => `${a}-${b}` === wanted);
  const own = of(key);
  for (const rest of atRest) {
    const other = of(rest);
    const far = other?.find((terminal) => !own?.includes(terminal));
    if (own && other && far !== undefined && other.some((terminal) => own.includes(terminal))) return far;
  }
  return null;
}

function controlsFor(
  { rig, shown }: RowField,
  part: PartId,
  contacts: readonly string[],
): readonly BranchControlPosition[] {
  const own = controlsOf(rig.circuit).filter((control) => control.part.id === part);
  const deciding = own.filter(({ control }) =>
    control.positions.some(({ joins }) => joins.some((pair) => contacts.includes(pair.join("-")))),
  );
  return (deciding.length > 0 ? deciding : own).map(({ key, control, rest }) => {
    const position = shown.condition.set?.[key] ?? rest;
    const name = own.length > 1 ? (control.label ?? control.name) : "";
    return { key, name, position, rest, isHeld: springsBack(rig.circuit, key, position) };
  });
}

// ---------------------------------------------------------------- joins

/** Taps on hidden nodes within a run: the other legs of a splice. */
function innerTaps(field: RowField, { ways, owner }: Run, line: ReadonlySet<Placed>): BranchRow["taps"] {
  if (field.rig.network.parts.get(owner)?.kind.role !== "join") return [];
  return ways.slice(0, -1).flatMap(({ to }) => legTaps(field, field.places[to]!, line));
}

/** Each leg of a splice as the wire that leaves by it. */
function legTaps(field: RowField, place: number, line: ReadonlySet<Placed>): BranchRow["taps"] {
  return tapsAt(field, place, line, []);
}

function exitTaps(field: RowField, run: Run, next: Run | undefined, line: ReadonlySet<Placed>): BranchRow["taps"] {
  const place = field.places[run.ways.at(-1)!.to]!;
  const beside = [run.owner, next?.owner ?? ""].filter((owner) => field.rig.network.parts.has(owner));
  return next === undefined && field.names[run.ways.at(-1)!.to]!.includes("~")
    ? []
    : tapsAt(field, place, line, beside);
}

/** Page links between two runs: the points differ, and only joints make them one place. */
function linkBetween(field: RowField, { ways, shares }: Run, next: Run, id: string): BranchLink | null {
  const [from, to] = [ways.at(-1)!.to, next.ways[0]!.from];
  if (from === to) return null;
  const owner = (node: NodeIndex): string | null => {
    const part = field.at[node]!.find(({ element }) => element.law === "joint")?.owner;
    return part !== undefined && !isBodyNode(field, from) ? part : null;
  };
  const parts = [owner(from), owner(to)].filter((part) => part !== null);
  if (parts.length < 2) return null;
  const name = field.names.find((each, node) => each.startsWith("=link:") && field.places[node] === field.places[from]);
  const entry = endOf(field, from);
  return {
    is: "link",
    id: `${id} link`,
    name: name?.slice("=link:".length) ?? "",
    parts,
    entry,
    exit: endOf(field, to),
    goodAmps: ways.at(-1)!.amps,
    share: shares.at(-1)!,
    taps: [],
  };
}

function isBodyNode({ names }: RowField, node: NodeIndex): boolean {
  return names[node]!.startsWith("=body");
}
