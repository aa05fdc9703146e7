import type { BenchAction } from "../state/action.ts";
import { pageOf, thingNamed } from "../state/places.ts";
import type { Thing, Wish } from "../state/state.ts";
import type { LearnerSight, Learning } from "./learning.ts";

/** What a learner looks at after an action of the bench; all that would change a circuit is not meant here. */
export function lookedAt(learning: Learning, action: BenchAction): LearnerSight {
  const { sight } = learning;
  switch (action.do) {
    case "show-page":
      return { ...sight, page: action.page, chosen: null, hovered: null };
    case "look-at":
      return { ...sight, viewports: { ...sight.viewports, [action.page]: action.viewport } };
    case "wish":
      return { ...sight, wish: wished(sight, action.want) };
    case "choose":
      return { ...sight, chosen: action.thing };
    case "hover":
      return { ...sight, hovered: action.thing };
    case "find":
      return found(learning, action.thing);
    case "find-named": {
      const thing = thingNamed(learning.attempt.exercise.circuit, action.id);
      return thing ? found(learning, thing) : sight;
    }
    default:
      return sight;
  }
}

function wished({ wish }: LearnerSight, want: Wish["want"]): Wish {
  return { want, count: (wish?.count ?? 0) + 1 };
}

function found({ attempt, sight }: Learning, thing: Thing): LearnerSight {
  const page = pageOf(attempt.exercise.circuit, thing, sight.page) ?? sight.page;
  return { ...sight, page, chosen: thing, wish: wished(sight, { show: thing }) };
}
