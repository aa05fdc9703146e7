import { refuse } from "../../../core/base/outcome.ts";
import { EXERCISE_SAYS as SAY } from "../../../core/base/words/exercise.ts";
import { complaintWords } from "../../../core/diagnose/order.ts";
import { type Attempt, begun, moved, toldOf, verdictOf } from "../../../core/lesson/attempt.ts";
import { complaintIn } from "../../../core/lesson/exercise.ts";
import { parseMoves } from "../../../core/lesson/moveText.ts";
import { replayed } from "../../../core/lesson/replay.ts";
import { type RouteLine, routeLines } from "../../../core/lesson/routeText.ts";
import { type Opened, openForLearner } from "../../../schemas/exercise.ts";
import { checkedHandin, formatHandin, type Handin, readHandin } from "../../../schemas/handin.ts";
import { learnerShape } from "../../../schemas/handinShape.ts";
import { LIMITS } from "../../../schemas/limits.ts";
import { readBytes, writeFileWhole } from "../../files.ts";
import { BadInput, type Console, EXIT, need } from "../console.ts";
import { exerciseIn } from "./given.ts";

/** What may be typed of work on an exercise. */
export interface RunTyped {
  readonly do?: readonly string[];
  readonly from?: string;
  readonly save?: string;
  readonly learner?: string;
  readonly json?: boolean;
}

/**
 * `exercise run FILE --do MOVE`: makes the moves and says what the vehicle shows. What was done before a wrong entry is kept
 * where `--save` says, and the entry is answered.
 */
export async function run(console: Console, path: string, typed: RunTyped): Promise<number> {
  const { save } = typed;
  if (save !== undefined && !save.toLowerCase().endsWith(".handin.json")) need(refuse("handin-ending", { file: save }));
  const opened = need(await openForLearner(await exerciseIn(path)));
  const before = typed.from === undefined ? null : await handinIn(typed.from, opened);
  const learner = learnerOf(typed.learner, before?.learner ?? "");
  const started = before
    ? need(replayed(opened.exercise, opened.vehicle, before.route)).at(-1)!
    : begun(opened.exercise);
  const { attempt, wrong } = work(started, opened, typed.do ?? []);
  if (save !== undefined) need(await writeFileWhole(save, await formatHandin(learner, opened, attempt.route)));
  if (wrong) throw wrong;
  const told = toldOf(attempt, opened.vehicle);
  if (typed.json) {
    const { route, minutes, condition, open } = attempt;
    console.write(`${JSON.stringify({ minutes, condition, open, route, told }, null, 2)}\n`);
    return EXIT.fine;
  }
  console.write(`Complaint: ${complaintWords(complaintIn(opened.exercise))}\n`);
  for (const line of routeLines(attempt)) console.write(`${lineText(line)}\n`);
  console.write(`${SAY.minutes(attempt.minutes.toFixed(1))}\n`);
  if (verdictOf(attempt)) console.write(`${told ? SAY.told(told.isRight, told.was) : SAY.filed}\n`);
  return EXIT.fine;
}

/** Who hands in: as typed, else as before. A hand-in that has a name goes on under that name only. */
function learnerOf(typed: string | undefined, before: string): string {
  const learner = typed ?? before;
  if (!learnerShape.safeParse(learner).success) need(refuse("learner-name", { most: LIMITS.labelLength }));
  if (before !== "" && learner !== before) need(refuse("learner-other", { learner: before }));
  return learner;
}

async function handinIn(path: string, opened: Opened): Promise<Handin> {
  return need(await checkedHandin(need(await readHandin(need(await readBytes(path)))), opened));
}

interface Worked {
  readonly attempt: Attempt;
  /** The first wrong entry; null where there was none. */
  readonly wrong: BadInput | null;
}

/** Makes the moves typed, one after the other, up to the first that cannot be made. */
function work(started: Attempt, { exercise, vehicle }: Opened, texts: readonly string[]): Worked {
  let attempt = started;
  for (const text of texts) {
    const moves = parseMoves(exercise.circuit, text, attempt.condition);
    if (!moves.ok) return { attempt, wrong: new BadInput(moves.refusal) };
    for (const move of moves.value) {
      const next = moved(attempt, vehicle, move, new Date().toISOString());
      if (!next.ok) return { attempt, wrong: new BadInput(next.refusal) };
      attempt = next.value;
    }
  }
  return { attempt, wrong: null };
}

function lineText({ number, minutes, move, reading, shown }: RouteLine): string {
  const head = `${String(number).padStart(3)}  ${minutes} min  ${move}${reading === null ? "" : `, reading ${reading}`}`;
  return shown === "" ? head : `${head}: ${shown}`;
}
