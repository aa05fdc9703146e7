import type { PartId, PointId } from "../base/ids.ts";
import type { Share } from "../base/units.ts";
import { DIAGNOSE_SENTENCES as SAY } from "../base/words/diagnose.ts";
import type { Circuit, FunctionCheck } from "../circuit/circuit.ts";
import { connectorAt, partAt, pointAt } from "../circuit/points.ts";
import type { Branch, BranchRow } from "../live/branch.ts";
import { type Fault, faultModes, type Target, targetOf } from "../live/fault.ts";
import { Rig } from "../live/rig.ts";
import { kindOf } from "../parts/catalogue.ts";
import { cavitiesOf, type Possible, possibleFaults } from "./possible.ts";
import { meltedIn } from "./predict.ts";
import type { Suspect } from "./step.ts";
import { triedOn, tryOut } from "./suspects.ts";

/** A vehicle that leaves the bay with something still wrong: the complaint is gone, or is said to be. */
export interface Masked {
  readonly id: string;
  /** What is still wrong, in words: "X32-1 still corroded, 0.5 ohm added". */
  readonly title: string;
  readonly faults: readonly Fault[];
  /** The circuit it is wrong in: one with a jumper lead where that was left fitted. */
  readonly circuit: Circuit;
  /** Whether it sits beside what was found, not in it: worth a few minutes, not the next trim. */
  readonly isBeside: boolean;
}

/** What a repair is masked by is asked of. */
export interface MaskedAsk {
  readonly circuit: Circuit;
  readonly complaint: FunctionCheck;
  readonly found: Pick<Possible, "id" | "faults" | "title">;
  /** The branch of the complaint's load in the good circuit; null where it carries no current. */
  readonly branch: Branch | null;
  /** Suspects that nothing has ruled out beside the one found. */
  readonly living: readonly Pick<Suspect, "faults">[];
}

/** Suspects besides the one found of which a lighter form is thought of, likeliest first. */
const MOST_LIVING = 4;
/** Share of the load's work from which a weak neighbour counts: less is within what healthy harnesses differ by (a guess). */
const LEAST_LOSS: Share = 0.02;

/**
 * All that would let the complaint's check work again with something still wrong: the found place and its neighbours
 * weak, a living suspect weak, a jumper left on, and behind a renewed fuse a short that another position calls up. Every
 * one of them was tried in the solver. First of all the fault itself, not mended.
 */
export function maskedBy(ask: MaskedAsk): readonly Masked[] {
  const { circuit, complaint, found } = ask;
  const own = new Set(found.faults.map(({ target }) => target));
  const beside = new Set([
    ...neighboursOf(ask),
    ...ask.living.slice(0, MOST_LIVING).flatMap(({ faults }) => faults.map(({ target }) => target)),
  ]);
  const isOwn = ({ faults }: Possible): boolean => faults.some(({ target }) => own.has(target));
  const weak = passes(
    circuit,
    complaint,
    [...new Set([...own, ...beside])].flatMap((id) => weakForms(circuit, id)),
  )
    .filter((each) => isOwn(each.possible) || each.loss >= LEAST_LOSS)
    .map(({ possible }) => possible);
  const isFuse = found.faults.some((fault) => isBlownFuse(circuit, fault));
  const shorts = passes(circuit, complaint, isFuse ? shortsOf(circuit) : [])
    .map(({ possible }) => possible)
    .filter((each) => meltsElsewhere(ask, each));
  return [
    { id: found.id, title: SAY.notMended(found.title), faults: found.faults, circuit, isBeside: false },
    ...[...weak, ...shorts].map((each): Masked => {
      const { id, title, faults } = each;
      return { id, title: SAY.still(title), faults, circuit, isBeside: !isOwn(each) && !shorts.includes(each) };
    }),
    ...jumperLeft(ask),
  ];
}

/** Every mode of a place that takes a value, at each of its usual values. */
function weakForms(circuit: Circuit, id: string): readonly Possible[] {
  const target = targetOf(circuit, id);
  const modes = target ? faultModes(circuit, target).filter(({ value }) => value !== undefined) : [];
  return possibleFaults(circuit).filter(
    ({ faults }) =>
      faults.length === 1 && faults[0]!.target === id && modes.some(({ mode }) => mode === faults[0]!.mode),
  );
}

function isBlownFuse(circuit: Circuit, { target, mode }: Fault): boolean {
  return mode === "blown" && partAt(circuit, target) !== undefined;
}

function shortsOf(circuit: Circuit): readonly Possible[] {
  return possibleFaults(circuit).filter(({ faults }) => faults.every(({ mode }) => /^short/.test(mode)));
}

/** Those with which the complaint's check works and no fuse suffers, with the share of its work that the load loses. */
function passes(
  circuit: Circuit,
  complaint: FunctionCheck,
  tried: readonly Possible[],
): readonly { readonly possible: Possible; readonly loss: Share }[] {
  let rig = new Rig(circuit);
  const healthy = tryOut(rig, complaint).doing;
  return tried.flatMap((possible) => {
    rig = new Rig(circuit, possible.faults, [], rig);
    const { verdict, level, melted } = triedOn(rig, complaint, healthy);
    return verdict === "works" && !melted ? [{ possible, loss: 1 - (level ?? 0) }] : [];
  });
}

/** Whether the found fuse melts with it while another check is tried. */
function meltsElsewhere({ circuit, found }: MaskedAsk, { faults }: Possible): boolean {
  const fuses = new Set<PartId>(found.faults.map(({ target }) => target));
  let rig: Rig | undefined;
  return circuit.checks.some(({ condition }) => {
    rig = new Rig(circuit, faults, [], rig);
    return meltedIn(rig, condition).some((part) => fuses.has(part));
  });
}

/** What lies next to the found place: the other places of its plug, and what comes before and after it in the branch. */
function neighboursOf({ circuit, found, branch }: MaskedAsk): readonly string[] {
  return found.faults.flatMap(({ target: id }) => {
    const target = targetOf(circuit, id);
    const rows = branch?.lines[0]?.rows ?? [];
    const at = rows.findIndex((row) => isRowOf(circuit, row, id));
    const beside = at < 0 ? [] : rows.slice(Math.max(0, at - 1), at + 2);
    return [...(target ? plugMates(circuit, target) : []), ...beside.flatMap(placesIn)];
  });
}

function plugMates(circuit: Circuit, target: Target): readonly string[] {
  if (target.is !== "cavity") return [];
  const plug = connectorAt(circuit, target.connector);
  return plug ? cavitiesOf(plug).map(({ id }) => id) : [];
}

/** What of a row can be faulty: its wire or part, and the plug places on either side. */
function placesIn(row: BranchRow): readonly string[] {
  return [row.name, ...[row.entry.point, row.exit.point].filter((point) => point !== null)];
}

/** Whether a fault of this target sits in a row: by its name, or in a plug place that the row begins or ends with. */
export function isRowOf(circuit: Circuit, row: BranchRow, target: string): boolean {
  if (row.name === target) return true;
  const point = pointAt(circuit, target);
  if (row.is === "wire" || row.is === "link" || point?.kind !== "cavity") return false;
  return row.part === point.carries?.replace(/\.[^.]+$/, "") && placesIn(row).includes(target);
}

/** The fault bridged by a lead that was left on: the load works, and nothing was mended. */
function jumperLeft({ circuit, complaint, found, branch }: MaskedAsk): readonly Masked[] {
  const row = branch?.lines[0]?.rows.find((each) => found.faults.some(({ target }) => isRowOf(circuit, each, target)));
  if (!row || (row.is === "part" && kindOf(partAt(circuit, row.part)?.kind ?? "")?.role === "load")) return [];
  const [from, to] = [row.entry.point, row.exit.point];
  if (from === null || to === null) return [];
  const id = freeName(circuit);
  const lead = (name: string, end: PointId, terminal: string) => ({
    id: `${id}${name}`,
    from: end,
    to: `${id}.${terminal}`,
    ohms: 0.001,
  });
  const own: Circuit = {
    ...circuit,
    parts: [...circuit.parts, { id, kind: "jumper", settings: { amps: 40 } }],
    wires: [...circuit.wires, lead("a", from, "1"), lead("b", to, "2")],
  };
  const healthy = tryOut(new Rig(circuit), complaint).doing;
  const { verdict, melted } = triedOn(new Rig(own, found.faults), complaint, healthy);
  if (verdict !== "works" || melted) return [];
  return [
    {
      id: `${found.id}+jumper`,
      title: SAY.jumperLeft(from, to),
      faults: found.faults,
      circuit: own,
      isBeside: false,
    },
  ];
}

/** An id that nothing in the circuit has. */
function freeName(circuit: Circuit): string {
  const taken = new Set([...circuit.parts, ...circuit.wires].map(({ id }) => id));
  let id = "JL";
  while ([...taken].some((each) => each.startsWith(id))) id += "L";
  return id;
}
