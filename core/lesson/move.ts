import type { ConnectorId, ControlKey, PartId } from "../base/ids.ts";
import type { Minutes } from "../base/units.ts";
import type { Shows } from "../diagnose/reading.ts";
import type { Instrument, LampTo } from "../diagnose/step.ts";
import type { Lead } from "../live/attachment.ts";
import type { Verdict } from "../live/judge.ts";
import type { LoadSeen } from "./vehicle.ts";

/** What a learner can do on the vehicle; a part is renewed by a good one in its place. Leads and instruments are those of a reading, taken as the vehicle stands. */
export type Move =
  | { readonly do: "throw"; readonly control: ControlKey; readonly position: string }
  | { readonly do: "try"; readonly check: string }
  | { readonly do: "engine"; readonly running: boolean }
  | { readonly do: "open"; readonly access: string }
  | { readonly do: "unplug" | "plug-in"; readonly connector: ConnectorId }
  | { readonly do: "take-out" | "put-in" | "renew"; readonly part: PartId }
  | ProbeMove
  | { readonly do: "hint" }
  | VerdictMove;

/** Leads put on and read; of a look, a sound or an act on a part, `red` is the part or plug. */
export interface ProbeMove {
  readonly do: "probe";
  readonly red: Lead | PartId;
  readonly black: Lead;
  readonly instrument: Instrument;
  readonly lampTo: LampTo;
}

/** The end: what is wrong, and the readings that prove it by their numbers from 1; none named means all of them. */
export interface VerdictMove {
  readonly do: "verdict";
  readonly suspect: string;
  readonly proof: readonly number[];
}

/** What the vehicle shows of a move. */
export interface Answer {
  /** What was read; null where nothing was. */
  readonly shows: Shows | null;
  /** What the loads do now, where the vehicle stands otherwise than before. */
  readonly loads: readonly LoadSeen[];
  /** Function checks that this position tries, by id, and how they come out. */
  readonly checks: Readonly<Record<string, Verdict>>;
  /** The hint asked for; null where none was. */
  readonly hint: string | null;
}

/** A move as it goes into the route: with what it cost, what it showed and when it was made. */
export interface Recorded {
  readonly move: Move;
  readonly minutes: Minutes;
  readonly answer: Answer;
  /** ISO 8601; null where nobody noted it. */
  readonly time: string | null;
}
