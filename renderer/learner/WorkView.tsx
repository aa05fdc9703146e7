import { capital } from "../../core/base/capital.ts";
import { INSTRUMENT_NAMES } from "../../core/base/words/exercise.ts";
import { DOES } from "../../core/base/words/learner.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { groupsToOpen } from "../../core/diagnose/testPoint.ts";
import { type Attempt, checksSeen, costOf, loadsNow, verdictOf } from "../../core/lesson/attempt.ts";
import type { Move } from "../../core/lesson/move.ts";
import { moveText } from "../../core/lesson/moveText.ts";
import { moveWords } from "../../core/lesson/moveWords.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { VERDICT_TITLES } from "../words/check.ts";
import { conditionPhrase } from "../words/condition.ts";
import { minutesText } from "../words/figures.ts";
import { LEARNER_WORDS as SAY } from "../words/learner.ts";
import { partTitle } from "../words/part.ts";
import { MoveEntry } from "./MoveEntry.tsx";
import { useLearning } from "./useLearning.ts";
import { useMoves } from "./useMoves.ts";

/** What is done on the vehicle beside the drawing: functions to try, trim, what is apart, and what may be used. */
export function WorkView() {
  const attempt = useLearning((learning) => learning.attempt);
  const { circuit } = attempt.exercise;
  return (
    <div className="learner-work">
      <MoveEntry />
      <Seen attempt={attempt} />
      <Functions attempt={attempt} />
      <Trim attempt={attempt} />
      <Standing attempt={attempt} circuit={circuit} />
      <Allowed attempt={attempt} />
    </div>
  );
}

interface Acting {
  readonly attempt: Attempt;
  readonly move: Move;
  /** What stands on the button where its row says the rest, which is `about`; the move in words where absent. */
  readonly words?: string;
  readonly about?: string;
}

/** One act with its price; pressed, it is done. */
function Act({ attempt, move, words, about }: Acting) {
  const make = useMoves();
  return (
    <button
      type="button"
      className="button is-quiet is-low learner-act"
      data-move={moveText(move)}
      disabled={verdictOf(attempt) !== null}
      onClick={() => make(move)}
    >
      {words ?? moveWords(attempt.exercise.circuit, move)}
      {about !== undefined && <span className="unseen">: {about}</span>}
      <span className="figures">{minutesText(costOf(attempt, move))}</span>
    </button>
  );
}

/** What the loads do in front of the learner. */
function Seen({ attempt }: { readonly attempt: Attempt }) {
  const { circuit } = attempt.exercise;
  const loads = loadsNow(attempt).filter(({ does }) => does !== "still");
  const hasThrown = attempt.route.some(({ answer }) => answer.loads.length > 0);
  return (
    <section>
      <h3>{SAY.seen}</h3>
      {loads.length === 0 && <p className="small">{hasThrown ? SAY.nothingWorks : SAY.notThrown}</p>}
      {loads.length > 0 && (
        <ul>
          {loads.map(({ part, does }) => (
            <li key={part} className="learner-row">
              <b className="together">{part}</b>
              <bdi>{nameOf(circuit, part)}</bdi>
              <span className="learner-end">{DOES[does] ?? does}</span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function nameOf(circuit: Circuit, id: string): string {
  const part = circuit.parts.find((each) => each.id === id);
  return part ? partTitle(circuit, part) : "";
}

function Functions({ attempt }: { readonly attempt: Attempt }) {
  const { circuit, complaint } = attempt.exercise;
  const seen = checksSeen(attempt);
  return (
    <section>
      <h3>{SAY.functions}</h3>
      <ul>
        {circuit.checks.map((check) => {
          const came = seen.get(check.id);
          return (
            <li key={check.id} className={check.id === complaint ? "learner-row is-complaint" : "learner-row"}>
              <div className="learner-words">
                <bdi>{check.label}</bdi>
                <span className="caption">{conditionPhrase(circuit, check.condition)}</span>
              </div>
              {came !== undefined && <b className="learner-end">{VERDICT_TITLES[came]}</b>}
              <Act attempt={attempt} move={{ do: "try", check: check.id }} words="Try" about={check.label} />
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function Trim({ attempt }: { readonly attempt: Attempt }) {
  const { access } = attempt.exercise.circuit;
  if (access.length === 0) return null;
  return (
    <section>
      <h3>{SAY.trim}</h3>
      <ul>
        {access.map(({ id, label, after = [] }) => {
          const shut = groupsToOpen(attempt.exercise.circuit, id).filter((group) => !attempt.open.includes(group.id));
          return (
            <li key={id} className="learner-row">
              <div className="learner-words">
                <bdi>{label}</bdi>
                {after.length > 0 && shut.length > 1 && (
                  <span className="caption">{SAY.after(shut.slice(0, -1).map((group) => group.label))}</span>
                )}
              </div>
              {attempt.open.includes(id) ? (
                <b className="learner-end">done</b>
              ) : (
                <Act attempt={attempt} move={{ do: "open", access: id }} words="Do it" about={label} />
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** Plugs that are apart, what is taken out, and the engine where it can charge. */
function Standing({ attempt, circuit }: { readonly attempt: Attempt; readonly circuit: Circuit }) {
  const { apart = [], out = [], running = false } = attempt.condition;
  const hasEngine = circuit.parts.some(({ kind }) => kind === "alternator");
  const back: readonly Move[] = [
    ...apart.map((connector): Move => ({ do: "plug-in", connector })),
    ...out.map((part): Move => ({ do: "put-in", part })),
    ...(hasEngine ? [{ do: "engine", running: !running } as const] : []),
  ];
  if (back.length === 0) return null;
  return (
    <section>
      <h3>{SAY.standing}</h3>
      <ul className="learner-acts">
        {back.map((move) => (
          <li key={moveText(move)}>
            <Act attempt={attempt} move={move} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What may be used in this exercise, and where the black lead lies. */
function Allowed({ attempt }: { readonly attempt: Attempt }) {
  const { dispatch } = useAppStore();
  const black = useLearning(({ sight }) => sight.black);
  const { instruments } = attempt.exercise;
  return (
    <section>
      <h3>{SAY.allowed}</h3>
      <p className="small">{capital(instruments.map((each) => INSTRUMENT_NAMES[each]).join(", "))}.</p>
      <p className="small learner-black">
        {SAY.blackLies(black === "battery -" ? "battery\u00a0−" : black)}
        {black !== "battery -" && (
          <button
            type="button"
            className="button is-quiet is-low"
            onClick={() => dispatch({ do: "learner-sees", sees: { black: "battery -" } })}
          >
            {SAY.blackBack}
          </button>
        )}
      </p>
    </section>
  );
}
