import type { PointId, WireId } from "../base/ids.ts";
import { type Outcome, ok, type Refusal, refuse } from "../base/outcome.ts";
import type { Circuit } from "../circuit/circuit.ts";
import type { Lead } from "../live/attachment.ts";
import { AMPS, type Clipped, hasAmps, INSTRUMENTS, isLead } from "../live/instruments/clipped.ts";
import type { Bench } from "./bench.ts";
import type { Change } from "./change.ts";

/** Why instruments cannot lie on a bench together, or null where they can: each has a number of its own. */
export function instrumentsRefusal(circuit: Circuit, clipped: readonly Clipped[]): Refusal | null {
  if (new Set(clipped.map(({ id }) => id)).size < clipped.length) return refuse("instrument-shape").refusal;
  for (const each of clipped) {
    const refusal = clippedRefusal(circuit, each);
    if (refusal) return refusal;
  }
  return null;
}

/** Why an instrument cannot lie on this bench, or null where it can: what it is clipped to must be there. */
function clippedRefusal(circuit: Circuit, each: Clipped): Refusal | null {
  if (!INSTRUMENTS.includes(each.instrument) || !/^[1-9]\d*$/.test(each.id)) return refuse("instrument-shape").refusal;
  if (each.instrument === "clamp") {
    const isThere = each.around === null || circuit.wires.some(({ id }) => id === each.around);
    return isThere ? null : refuse("wire-unknown", { wire: each.around! }).refusal;
  }
  const { red, black, amps } = each;
  const lost = [red, black].find((lead) => lead !== null && !isLead(circuit, lead));
  if (lost != null) return refuse("point-spelling", { text: lost }).refusal;
  if (red !== null && red === black) return refuse("leads-together", { point: red }).refusal;
  return ampsRefusal(each.instrument, amps);
}

/** Why these amps cannot be an instrument's, `instrument-amps` or `amount-limits`; null where they can. */
function ampsRefusal(instrument: Clipped["instrument"], amps: number | undefined): Refusal | null {
  if (!hasAmps(instrument)) return amps === undefined ? null : refuse("instrument-amps").refusal;
  const { least: min, most: max } = AMPS[instrument];
  if (amps !== undefined && amps >= min && amps <= max) return null;
  const what = instrument === "jumper" ? "The fuse of a jumper" : "A stand-in load";
  return refuse("amount-limits", { what, min, max, unit: "A", value: String(amps) }).refusal;
}

/** The instrument of this id on the bench. Refuses `instrument-absent`. */
export function instrumentOn({ clipped }: Bench, id: string): Outcome<Clipped> {
  const each = clipped.find((one) => one.id === id);
  return each ? ok(each) : refuse("instrument-absent", { id });
}

/** The change by which an instrument is clipped or set as `now` says, in its place among the others. */
export function clippedAs({ clipped }: Bench, now: Clipped): Change {
  return { change: "bench", field: "clipped", value: clipped.map((one) => (one.id === now.id ? now : one)) };
}

/** The change by which leads and clamps come off what is not there any more; none where all is. */
export function clippedTrimmed({ clipped }: Bench, now: Circuit): readonly Change[] {
  return clippedMoved(
    clipped,
    (lead) => (isLead(now, lead) ? lead : null),
    (wire) => (now.wires.some(({ id }) => id === wire) ? wire : null),
  );
}

/** The change by which leads and clamps go elsewhere; none where all stay. */
export function clippedMoved(
  clipped: readonly Clipped[],
  toPoint: (point: PointId) => Lead | null,
  toWire: (wire: WireId) => WireId | null = (wire) => wire,
): readonly Change[] {
  const moveLead = (lead: Lead | null): Lead | null =>
    lead === null || lead === "battery +" || lead === "battery -" ? lead : toPoint(lead);
  const value = clipped.map((each): Clipped => {
    if (each.instrument === "clamp") {
      const around = each.around === null ? null : toWire(each.around);
      return around === each.around ? each : { ...each, around };
    }
    const [red, black] = [moveLead(each.red), moveLead(each.black)];
    return red === each.red && black === each.black ? each : { ...each, red, black };
  });
  return value.every((each, index) => each === clipped[index]) ? [] : [{ change: "bench", field: "clipped", value }];
}
