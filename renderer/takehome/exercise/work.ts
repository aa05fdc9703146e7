import type { StoreApi } from "zustand/vanilla";
import type { Outcome } from "../../../core/base/outcome.ts";
import type { Palette } from "../../../core/drawing/ink.ts";
import { type Attempt, attemptAfter, begun, verdictOf } from "../../../core/lesson/attempt.ts";
import type { Exercise } from "../../../core/lesson/exercise.ts";
import type { Move, Recorded } from "../../../core/lesson/move.ts";
import type { Spot } from "../../../core/lesson/offers.ts";
import type { Told } from "../../../core/lesson/vehicle.ts";
import type { VehicleAnswer, VehicleQuestion } from "../../learner/keeper.ts";
import { said } from "./said.ts";

/** An exercise that is worked on in a page: how far the learner is, and what of it is in sight. The fault is nowhere in it. */
export interface Work {
  readonly id: string;
  readonly attempt: Attempt;
  /** What the verdict came to, where the exercise tells. */
  readonly told: Told | null;
  /** Id of the page of the drawing that is shown. */
  readonly page: string;
  /** What is looked at, to see what can be done there. */
  readonly spot: Spot | null;
  readonly palette: Extract<Palette, "light" | "dark">;
  /** Why the last act could not be done, in a sentence; "" where it could. */
  readonly trouble: string;
  readonly isAsking: boolean;
}

/** What holds the work: told a new one, it shows it. */
export type WorkStore = StoreApi<Work>;

/** Whoever keeps the vehicle. */
export type Keeper = (question: VehicleQuestion) => Promise<Outcome<VehicleAnswer>>;

/** The work as it is begun, or goes on behind moves that were made before. */
export function workOn(
  exercise: Exercise,
  id: string,
  told: Told | null,
  route: readonly Recorded[],
  palette: Work["palette"],
): Work {
  const attempt = route.reduce(attemptAfter, begun(exercise));
  const page = exercise.circuit.pages[0]?.id ?? "";
  return { id, attempt, told, page, spot: null, palette, trouble: "", isAsking: false };
}

/** Makes moves one after the other, up to the first that cannot be made; that one is told of. */
export async function made(store: WorkStore, keeper: Keeper, moves: readonly Move[], now: () => string): Promise<void> {
  if (store.getState().isAsking || verdictOf(store.getState().attempt)) return;
  store.setState({ isAsking: true, trouble: "" });
  for (const move of moves) {
    const { id } = store.getState();
    const answer = await keeper({ ask: "move", id, move, time: now() });
    if (!answer.ok) {
      store.setState({ trouble: said(answer.refusal) });
      break;
    }
    const { recorded, told } = answer.value as Extract<VehicleAnswer, { readonly recorded: Recorded }>;
    store.setState(({ attempt }) => ({ attempt: attemptAfter(attempt, recorded), told }));
  }
  store.setState({ isAsking: false });
}
