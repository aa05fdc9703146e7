import type { ConnectorId, PartId, PointId } from "../base/ids.ts";
import type { Refusal } from "../base/outcome.ts";
import type { Minutes } from "../base/units.ts";
import type { Circuit } from "../circuit/circuit.ts";
import { controlsOf, isInLine, partAt, pointAt, terminalPoint, terminalsOf, wireSideOf } from "../circuit/points.ts";
import { fuseAcross } from "../diagnose/inPlace.ts";
import type { Instrument, LampTo } from "../diagnose/step.ts";
import { groupsToOpen, reachOf, testPointsOf } from "../diagnose/testPoint.ts";
import type { Lead } from "../live/attachment.ts";
import { type Attempt, costOf, refusalOf } from "./attempt.ts";
import { leadPlace } from "./leadPlace.ts";
import type { Move } from "./move.ts";

/** What a learner points at on the drawing. */
export interface Spot {
  readonly is: "part" | "wire" | "point";
  readonly id: string;
}

/** A move that can be thought of somewhere, with what it would cost now and why it cannot be made, if so. */
export interface Offer {
  readonly move: Move;
  readonly minutes: Minutes;
  readonly refusal: Refusal | null;
}

/** Where the lead lies that is not at the spot. */
export type OtherLead = Lead;

/**
 * What can be done at a spot of the drawing, the black lead lying elsewhere: trim in front of it, what is measured with the
 * instruments that are allowed, what is sensed, pulled, renewed. What makes no sense there is left out; what only has to wait for
 * something, or must not be done, stands with its refusal.
 */
export function offersAt(attempt: Attempt, spot: Spot, black: OtherLead = "battery -"): readonly Offer[] {
  const { exercise } = attempt;
  const { circuit } = exercise;
  return [...trimAt(attempt, spot), ...movesAt(attempt, spot, black)]
    .filter((move) => move.do !== "probe" || exercise.instruments.includes(move.instrument))
    .map((move) => ({ move, minutes: 0, refusal: refusalOf(attempt, move) }))
    .filter(({ refusal }) => refusal === null || !SENSELESS.has(refusal.code))
    .map(({ move, refusal }) => ({ move, refusal, minutes: isKnown(circuit, move) ? costOf(attempt, move) : 0 }));
}

/** Refusals of what makes no sense at a spot at all: nothing that is done elsewhere makes it possible. */
const SENSELESS: ReadonlySet<string> = new Set([
  "move-stands",
  "move-open",
  "move-apart",
  "move-home",
  "move-no-socket",
  "move-no-spare",
  "move-out",
  "move-in",
  "move-same-point",
  "move-no-fuse",
  "move-no-module",
  "move-silent",
  "reading-clamp",
  "reading-act",
  "reading-part",
]);

/** A lead on a place that no probe reaches costs nothing, since it cannot be put there. */
function isKnown(circuit: Circuit, move: Move): boolean {
  if (move.do !== "probe" || partAt(circuit, move.red)) return true;
  return testPointsOf(circuit).some(({ point }) => point === move.red || move.red === point.replace(/-[^-]+$/, ""));
}

/** The trim that must come off first, if any is still on; none for the sake of what is not to be touched. */
function trimAt({ exercise: { circuit }, open }: Attempt, spot: Spot): readonly Move[] {
  const shut = placesOf(circuit, spot).flatMap((place) => {
    const { access = null, doNotProbe } = reachOf(circuit, place);
    return access === null ||
      doNotProbe !== undefined ||
      groupsToOpen(circuit, access).every(({ id }) => open.includes(id))
      ? []
      : [access];
  });
  return [...new Set(shut)].map((access): Move => ({ do: "open", access }));
}

/** The places at which something is done for a spot. */
function placesOf(circuit: Circuit, { is, id }: Spot): readonly string[] {
  if (is === "wire") return endsOf(circuit, id);
  if (is === "part") return [id, ...plugsOf(circuit, id)];
  const plug = plugAt(circuit, id);
  return [wireSideOf(circuit, id), ...(plug === null ? [] : [plug])];
}

function movesAt(attempt: Attempt, { is, id }: Spot, black: Lead): readonly Move[] {
  const { circuit } = attempt.exercise;
  if (is === "wire") return endsOf(circuit, id).flatMap((end) => readingsAt(attempt, end, black));
  if (is === "part") return partMoves(circuit, id);
  const point = pointAt(circuit, id);
  const plug = plugAt(circuit, id);
  const own = point?.kind === "terminal" && plug === null ? pulls(point.part.id) : [];
  return [...readingsAt(attempt, id, black), ...(plug === null ? own : plugMoves(plug))];
}

function endsOf(circuit: Circuit, wire: string): readonly PointId[] {
  const found = circuit.wires.find(({ id }) => id === wire);
  return found ? [found.from, found.to] : [];
}

/** The plugs on which a part hangs; an in-line joint is one itself. */
function plugsOf(circuit: Circuit, id: PartId): readonly ConnectorId[] {
  const part = partAt(circuit, id);
  if (!part) return [];
  if (isInLine(part)) return [id];
  const plugs = terminalsOf(circuit, part).map((terminal) => plugAt(circuit, terminalPoint(part, terminal)));
  return [...new Set(plugs.filter((plug) => plug !== null))];
}

/** The plug or in-line joint in which a point lies; null for a stud, a blade or a splice. */
function plugAt(circuit: Circuit, point: PointId): ConnectorId | null {
  const behind = pointAt(circuit, wireSideOf(circuit, point));
  if (behind?.kind === "cavity") return behind.connector.id;
  return behind?.kind === "terminal" && isInLine(behind.part) ? behind.part.id : null;
}

const METERS: readonly Instrument[] = ["meter volts", "meter ohms"];
const LAMPS: readonly Instrument[] = ["4 A lamp", "0.25 A lamp"];

function readingsAt({ exercise: { circuit }, condition }: Attempt, id: PointId, black: Lead): readonly Move[] {
  const red = leadPlace(circuit, id, condition);
  const probe = (instrument: Instrument, other: Lead, lampTo: LampTo): Move => ({
    do: "probe",
    red,
    black: other,
    instrument,
    lampTo,
  });
  const fuse = black === "battery -" ? null : fuseAcross(circuit, red, black);
  return [
    ...METERS.map((meter) => probe(meter, black, null)),
    probe("clamp", "battery -", null),
    ...LAMPS.flatMap((lamp) => [probe(lamp, "battery -", "battery -"), probe(lamp, "battery -", "battery +")]),
    ...(fuse === null ? [] : LAMPS.map((lamp) => probe(lamp, black, "black"))),
  ];
}

const SENSES: readonly Instrument[] = ["look", "listen", "scan tool", "fed direct", "fed loose", "like relay"];

function sensed(red: string, instrument: Instrument): Move {
  return { do: "probe", red, black: "battery -", instrument, lampTo: null };
}

function partMoves(circuit: Circuit, part: PartId): readonly Move[] {
  const throws = controlsOf(circuit)
    .filter((control) => control.part.id === part)
    .flatMap(({ key, control }) =>
      control.positions.map((position): Move => ({ do: "throw", control: key, position: position.name })),
    );
  const plugs = plugsOf(circuit, part);
  // An in-line joint is looked at as the plug that it is.
  const senses = plugs.includes(part) ? [] : SENSES.map((sense) => sensed(part, sense));
  return [...throws, ...senses, ...pulls(part), ...plugs.flatMap(plugMoves)];
}

function pulls(part: PartId): readonly Move[] {
  return [
    { do: "take-out", part },
    { do: "put-in", part },
    { do: "renew", part },
  ];
}

function plugMoves(connector: ConnectorId): readonly Move[] {
  return [sensed(connector, "look"), { do: "unplug", connector }, { do: "plug-in", connector }];
}
