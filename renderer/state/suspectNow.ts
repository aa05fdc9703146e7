import { remember } from "../../core/base/memo.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Suspect } from "../../core/diagnose/step.ts";
import { type LiveNow, liveNow } from "../../core/edit/liveNow.ts";
import { liveWith } from "../../core/edit/liveWith.ts";
import { coveredUp } from "../../core/lesson/cover.ts";
import type { Differs } from "../../core/live/differences.ts";
import { isCoveredNow } from "../class/lesson.ts";
import type { Open } from "./state.ts";

/** Living suspects while their view is open, likeliest first; none else. */
export function suspectsInSight({ panel, desk, order }: Open): readonly Suspect[] {
  if (panel !== "suspects" || desk.bench.complaint === null) return NONE;
  return order.answer?.order.suspects ?? NONE;
}

const NONE: readonly Suspect[] = [];

/** The suspect that the drawing shows: the one whose row is open, else the likeliest; null while their view is shut. */
export function suspectOnSheet(open: Open): Suspect | null {
  const suspects = suspectsInSight(open);
  return suspects.find(({ id }) => id === open.suspect) ?? suspects[0] ?? null;
}

/** The suspect with which the wires are shown; null where they are shown as they are. */
export function shownWith(open: Open): Suspect | null {
  return open.isWithSuspect ? suspectOnSheet(open) : null;
}

/** The live state that the drawing shows: with nothing wrong, with the faults put in, or as it would be with a suspect. */
export function liveOnSheet(open: Open): LiveNow {
  const { desk } = open;
  const suspect = shownWith(open);
  const now = suspect ? liveWith(desk.bench, suspect.faults) : liveNow(desk.bench);
  return isCoveredOnSheet(open) ? coveredNow(now)(desk.bench.circuit) : now;
}

/** Whether the states are covered up in the instructor's own window too, for who sits beside. */
export function isCoveredOnSheet({ lesson }: Pick<Open, "lesson">): boolean {
  return lesson.isCoveredHere && isCoveredNow(lesson);
}

/** A live state of the bench with its states covered up, while a class is to say them first. */
const coveredNow = remember((now: LiveNow) =>
  remember((circuit: Circuit): LiveNow => ({ ...now, shown: coveredUp(circuit, now.shown), differs: NO_DIFFERENCE })),
);

const NO_DIFFERENCE: Differs = { points: new Set(), parts: new Set(), wires: new Set() };

/** Share from which a suspect that is not the one shown is marked on the drawing too (our own number). */
const MARKED_FROM = 0.05;

/** A suspect as the drawing marks it. */
export interface SuspectMark {
  readonly suspect: Suspect;
  /** The one that is shown, in full ink and with its break; the others are thin. */
  readonly isShown: boolean;
}

/** What the drawing marks: the suspect shown, and the others that are likely enough. The shown one comes last, over them. */
export function suspectMarks(suspects: readonly Suspect[], shown: Suspect | null): readonly SuspectMark[] {
  const others = suspects.filter((each) => each !== shown && each.probability >= MARKED_FROM);
  const thin = others.map((suspect) => ({ suspect, isShown: false }));
  return shown ? [...thin, { suspect: shown, isShown: true }] : thin;
}
