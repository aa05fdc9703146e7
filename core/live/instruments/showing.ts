import type { Outcome, Refusal } from "../../base/outcome.ts";
import type { Amps, Ohms, Volts } from "../../base/units.ts";
import type { Circuit } from "../../circuit/circuit.ts";
import { type Brightness, brightness } from "../../trade/instruments.ts";
import type { Attachment, Lead } from "../attachment.ts";
import type { Fault } from "../fault.ts";
import type { ClippedLive, Live } from "../live.ts";
import type { Standing } from "../standing.ts";
import { attachmentsOf, type Clipped } from "./clipped.ts";
import { DRIFT_VOLTS } from "./meter.ts";
import { ohmsBetween } from "./ohmmeter.ts";

/** What an instrument shows, in the order in which `INSTRUMENTS` has them; `free` while a lead hangs free. */
export type Showing =
  | { readonly shows: "free" }
  /** Red against black. `drifts` where a lead floats: any of the volts of `DRIFT_VOLTS` may stand there, as on a ground. */
  | { readonly shows: "volts"; readonly volts: Volts; readonly range: ClippedLive["range"]; readonly drifts: boolean }
  | { readonly shows: "lamp"; readonly light: Brightness; readonly volts: Volts; readonly amps: Amps }
  /** What is not settled decides how a lamp, a jumper or a load does. */
  | { readonly shows: "undecided" }
  /** A jumper, whose own fuse may be melted. Red -> black positive. */
  | { readonly shows: "jumper"; readonly amps: Amps; readonly melted: boolean }
  /** From the wire's from end to its to end. */
  | { readonly shows: "amps"; readonly amps: Amps }
  /** Null for an open line. */
  | { readonly shows: "ohms"; readonly ohms: Ohms | null }
  | { readonly shows: "nothing"; readonly refusal: Refusal };

/** Where the circuit stands in which instruments are read: its live state with them clipped on, and what goes on from it. */
export interface Read {
  readonly circuit: Circuit;
  readonly live: Live;
  readonly now: Standing;
  readonly faults: readonly Fault[];
}

/** What every instrument shows, by id. The live state must have been made with `attachmentsOf` the same instruments. */
export function showings(clipped: readonly Clipped[], read: Read): ReadonlyMap<string, Showing> {
  const attached = attachmentsOf(clipped, read.circuit.nominalVolts);
  const felt = new Map(attached.map(({ id }, index) => [id, read.live.clipped[index]!] as const));
  const others = attached.map(({ attachment }) => attachment);
  return new Map(clipped.map((each) => [each.id, showingOf(each, felt.get(each.id) ?? null, read, others)] as const));
}

/** An ohmmeter is no load itself: all that is attached is what else is clipped on. */
function showingOf(each: Clipped, felt: ClippedLive | null, read: Read, others: readonly Attachment[]): Showing {
  if (each.instrument === "clamp") {
    const wire = each.around === null ? undefined : read.live.wires.get(each.around);
    return wire ? { shows: "amps", amps: wire.amps } : { shows: "free" };
  }
  const { red, black } = each;
  if (red === null || black === null) return { shows: "free" };
  if (each.instrument === "ohmmeter") return ohmsShown(ohmsBetween({ ...read, others }, [red, black]));
  const { volts, amps, range, melted } = felt!;
  if (each.instrument === "voltmeter") {
    const drifts = Math.abs(volts) <= DRIFT_VOLTS[1] && [red, black].some((lead) => floats(read.live, lead));
    return { shows: "volts", volts, range, drifts };
  }
  if (range) return { shows: "undecided" };
  if (each.instrument === "jumper") return { shows: "jumper", amps, melted };
  return { shows: "lamp", light: brightness(volts, read.circuit.nominalVolts), volts, amps };
}

function ohmsShown(ohms: Outcome<Ohms | null>): Showing {
  return ohms.ok ? { shows: "ohms", ohms: ohms.value } : { shows: "nothing", refusal: ohms.refusal };
}

function floats({ points }: Live, lead: Lead): boolean {
  return points.get(lead)?.state === "floating";
}
