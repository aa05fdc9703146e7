import type { PartId } from "../base/ids.ts";
import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { connectorAt, partAt } from "../circuit/points.ts";
import type { PositionTable } from "../diagnose/positionTable.ts";
import type { ProbeOrder } from "../diagnose/step.ts";
import { groupsToOpen, reachOf } from "../diagnose/testPoint.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { Part } from "../parts/kind.ts";
import { settingsOf } from "../parts/view.ts";
import { nearestFuses } from "./nearFuses.ts";
import { plainNumber } from "./range.ts";
import { HOLD_SECONDS } from "./setCell.ts";
import { controlName, springsBack } from "./throws.ts";

/** Cautions tied to the job; the last line of the frame is the same on every sheet. */
const MOST_TIED = 7;
const MOST_FUSES = 2;
/** More of a vehicle's own would leave no room for rows; the frame then says how many there are. */
const MOST_OF_VEHICLE = 12;

/**
 * The cautions in the frame of a checklist, at most eight: those of the vehicle, then those of the job in the order of
 * how much they guard, and last whose word comes first. Only a vehicle with more than seven of its own has more.
 */
export function checklistCautions(circuit: Circuit, order: ProbeOrder): readonly string[] {
  const conditions = order.steps.flatMap((step) => step.settings.map(({ condition }) => condition));
  const trim = order.steps.flatMap(({ access }) => (access === null ? [] : groupsToOpen(circuit, access)));
  const own = [
    ...order.steps.flatMap(({ cautions }) => cautions),
    ...[...new Set(trim)].flatMap((group) => group.cautions ?? []),
  ];
  const load = loadOf(circuit, order);
  const hasLamp = order.steps.some(({ instrument }) => instrument === "4 A lamp");
  return framed(circuit, {
    conditions,
    own: byCount(own),
    fuses: load === null ? [] : nearestFuses(circuit, load),
    hasLamp,
  });
}

/** The load whose check the complaint names, alone or before what was seen of it; null where it names none. */
export function loadOf(circuit: Circuit, { complaint }: ProbeOrder): PartId | null {
  const named = circuit.checks.filter(({ label, id }) =>
    [label, id].some((name) => complaint === name || complaint.startsWith(`${name}:`)),
  );
  return (
    named.reduce((best, each) => (each.label.length > (best?.label.length ?? 0) ? each : best), named[0])?.load ?? null
  );
}

/** The part that a table's connector belongs to; the connector itself where it carries none. */
function ownerOf(circuit: Circuit, { connector }: PositionTable): PartId {
  const carried = Object.values(connectorAt(circuit, connector)?.cavities ?? {})[0];
  return carried?.replace(/\.[^.]+$/, "") ?? connector;
}

/** The same for a position table, whose every cell may be read with a lamp. */
export function tableCautions(circuit: Circuit, table: PositionTable): readonly string[] {
  const reaches = table.rows.map(({ point }) => reachOf(circuit, point));
  const trim = reaches.flatMap(({ access }) => (access === undefined ? [] : groupsToOpen(circuit, access)));
  return framed(circuit, {
    conditions: table.columns.map(({ condition }) => condition),
    own: byCount([...reaches, ...trim].flatMap(({ cautions }) => cautions ?? [])),
    fuses: nearestFuses(circuit, ownerOf(circuit, table)),
    hasLamp: true,
  });
}

/** The same for a circuit that is handed on without a job: of all its checks, scenes, places and fuses. */
export function circuitCautions(circuit: Circuit): readonly string[] {
  const fuses = circuit.parts.filter(({ kind }) => kindOf(kind)?.role === "protection");
  return framed(circuit, {
    conditions: [...circuit.checks, ...circuit.scenes].map(({ condition }) => condition),
    own: byCount([...Object.values(circuit.reach), ...circuit.access].flatMap(({ cautions }) => cautions ?? [])),
    fuses,
    hasLamp: true,
  });
}

interface Job {
  readonly conditions: readonly Condition[];
  readonly own: readonly string[];
  readonly fuses: readonly Part[];
  readonly hasLamp: boolean;
}

function framed(circuit: Circuit, { conditions, own, fuses, hasLamp }: Job): readonly string[] {
  const vehicle = vehicleLines(circuit);
  const tied = new Set([
    ...vehicle,
    ...holdLines(circuit, conditions),
    WORDS.yellowOrOrange,
    ...own,
    ...(fuses.length > 0 ? [fuseLine(circuit, fuses)] : []),
    WORDS.backProbe,
    ...(hasLamp ? [WORDS.lampGetsHot] : []),
  ]);
  return [...[...tied].slice(0, Math.max(MOST_TIED, vehicle.length)), WORDS.deference];
}

function vehicleLines(circuit: Circuit): readonly string[] {
  const all = [...new Set(circuit.cautions ?? [])].filter((caution) => caution !== WORDS.deference);
  if (all.length <= MOST_OF_VEHICLE) return all;
  const shown = all.slice(0, MOST_OF_VEHICLE - 1);
  return [...shown, WORDS.moreCautions(all.length - shown.length)];
}

/** Each once, those that most rows carry first. */
function byCount(cautions: readonly string[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const caution of cautions) counts.set(caution, (counts.get(caution) ?? 0) + 1);
  return [...counts.keys()].sort((one, other) => counts.get(other)! - counts.get(one)!);
}

/** "Hold S5 3 s at most" for every spring-back control that a row holds and that drives a motor. */
function holdLines(circuit: Circuit, conditions: readonly Condition[]): readonly string[] {
  const held = conditions.flatMap(({ set = {} }) =>
    Object.entries(set).flatMap(([key, position]) => (springsBack(circuit, key, position) ? [key] : [])),
  );
  return [...new Set(held)].flatMap((key) => {
    const amps = stallAmps(circuit, key);
    return amps === null ? [] : [WORDS.holdShort(controlName(circuit, key), HOLD_SECONDS, plainNumber(amps))];
  });
}

/** The largest amps that a motor draws held still, of the motors whose checks throw this control; null without one. */
function stallAmps(circuit: Circuit, key: string): number | null {
  const loads = circuit.checks.filter(({ condition }) => condition.set?.[key] !== undefined).map(({ load }) => load);
  const amps = loads.flatMap((load) => {
    const part = partAt(circuit, load);
    const kind = part && kindOf(part.kind);
    const stall = part && kind ? settingsOf(kind, part, circuit.nominalVolts).stall : undefined;
    return typeof stall === "number" ? [stall] : [];
  });
  return amps.length === 0 ? null : Math.max(...amps);
}

/** "F4: 25 A for 25 A. Blows again: find the short first."; without names where there are many. */
function fuseLine(circuit: Circuit, fuses: readonly Part[]): string {
  if (fuses.length > MOST_FUSES) return WORDS.findTheShort(WORDS.fusesLikeForLike);
  const named = fuses.map((fuse) => {
    const kind = kindOf(fuse.kind)!;
    return WORDS.fuseForFuse(fuse.id, plainNumber(Number(settingsOf(kind, fuse, circuit.nominalVolts).amps)));
  });
  return WORDS.findTheShort(named.join(", "));
}
