import type { Front } from "../../schemas/calls/window.ts";
import type { Host } from "../host/host.ts";
import type { AppState } from "./state.ts";
import type { Reaction } from "./store.ts";

/** What is in front: the desk of hand-ins over all else, an exercise, a circuit, or the library. */
export function frontOf({ handins, learning, open }: AppState): Front {
  if (handins.isShown) return "desk";
  if (learning) return "learner";
  return open ? "bench" : "library";
}

/** Tells the host what is in front whenever that is something else, so that its menu offers nothing that would do nothing. */
export function frontingReaction({ ask }: Pick<Host, "ask">): Reaction {
  // What a page before this one told, before it was lost, may hold no more.
  let told: Front | null = null;
  return (_action, state) => {
    const front = frontOf(state);
    if (front === told) return;
    told = front;
    // A host that does not answer has other troubles, and those are told of where something is lost by them.
    ask("window.front", { front }).catch(() => {});
  };
}
