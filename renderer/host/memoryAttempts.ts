import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import type { Answer, Argument, AttemptRow, CallName, KeptAttempt } from "../../schemas/calls.ts";
import { exerciseId, readExercise } from "../../schemas/exercise.ts";

type Name = Extract<CallName, `attempts.${string}`>;
type Answering = {
  readonly [N in Name]: (argument: Argument<N>) => Outcome<Answer<N>> | Promise<Outcome<Answer<N>>>;
};

/** Exercises that a learner works on, forgotten when the page goes. */
export function memoryAttempts(moment: () => string): Answering {
  const all = new Map<string, { readonly row: AttemptRow; readonly kept: KeptAttempt }>();
  const change = (id: string, next: (row: AttemptRow) => Partial<AttemptRow>): Outcome<AttemptRow> => {
    const found = all.get(id);
    if (!found) return refuse("attempt-unknown");
    const row = { ...found.row, ...next(found.row) };
    all.set(id, { ...found, row });
    return ok(row);
  };
  return {
    "attempts.list": ({ where = "library" }) => {
      const rows = [...all.values()].map(({ row }) => row);
      return ok({ rows: rows.filter(({ removed }) => (removed !== null) === (where === "bin")) });
    },
    "attempts.take": async ({ text }) => {
      const file = readExercise(text);
      if (!file.ok) return file;
      const { title, circuit, complaint } = file.value.exercise;
      const id = await exerciseId(file.value);
      const made = moment();
      const label = circuit.checks.find((check) => check.id === complaint)?.label ?? "";
      const begun = {
        id,
        title,
        complaint: label,
        minutes: 0,
        moves: 0,
        isOver: false,
        made,
        edited: made,
        removed: null,
      };
      const { kept, row } = all.get(id) ?? { kept: { id, text, learner: "", route: [] }, row: begun };
      all.set(id, { kept, row: { ...row, removed: null } });
      return ok({ ...kept, wasDeleted: row.removed !== null });
    },
    "attempts.open": ({ id }) => {
      const found = all.get(id);
      return found?.row.removed === null ? ok(found.kept) : refuse("attempt-unknown");
    },
    "attempts.add": ({ id, from, moves, learner }) => {
      const found = all.get(id);
      if (found?.row.removed !== null) return refuse("attempt-unknown");
      if (found.kept.route.length !== from) return refuse("attempt-elsewhere");
      const route = [...found.kept.route, ...moves];
      const minutes = route.reduce((sum, each) => sum + each.minutes, 0);
      const isOver = route.at(-1)?.move.do === "verdict";
      const row = { ...found.row, minutes, moves: route.length, isOver, edited: moment() };
      all.set(id, { kept: { ...found.kept, learner, route }, row });
      return ok({});
    },
    "attempts.restart": ({ id }) => {
      const found = all.get(id);
      if (found?.row.removed !== null) return refuse("attempt-unknown");
      const kept = { ...found.kept, route: [] };
      all.set(id, { kept, row: { ...found.row, minutes: 0, moves: 0, isOver: false, edited: moment() } });
      return ok(kept);
    },
    "attempts.remove": ({ id }) => change(id, () => ({ removed: moment() })),
    "attempts.restore": ({ id }) => change(id, () => ({ removed: null })),
  };
}
