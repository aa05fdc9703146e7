import { type FormEvent, useId, useState } from "react";
import type { Outcome } from "../../core/base/outcome.ts";
import { ok } from "../../core/base/outcome.ts";
import { sentence } from "../../core/base/words.ts";
import { type Attempt, attemptAfter, costOf, refusalOf, verdictOf } from "../../core/lesson/attempt.ts";
import type { Move } from "../../core/lesson/move.ts";
import { parseMoves } from "../../core/lesson/moveText.ts";
import { moveWords } from "../../core/lesson/moveWords.ts";
import { minutesText } from "../words/figures.ts";
import { LEARNER_WORDS as SAY } from "../words/learner.ts";
import { useLearning } from "./useLearning.ts";
import { useMoves } from "./useMoves.ts";

/** What is done, typed: under the field stands what Enter will do and cost, or why it cannot be done. */
export function MoveEntry() {
  const attempt = useLearning((learning) => learning.attempt);
  const isAsking = useLearning((learning) => learning.isAsking);
  const make = useMoves();
  const [typed, setTyped] = useState("");
  const about = useId();
  const meant = typed.trim() === "" ? null : meantBy(attempt, typed);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (!meant?.ok || isAsking) return;
    make(...meant.value.moves);
    setTyped("");
  };
  if (verdictOf(attempt)) return null;
  return (
    <form onSubmit={submit}>
      <label className="field">
        <input
          value={typed}
          placeholder={SAY.typedExample}
          aria-label={SAY.type}
          aria-describedby={about}
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => setTyped(event.target.value)}
        />
      </label>
      <p id={about} className="caption learner-meant" aria-live="polite">
        {meant === null ? SAY.orClick : meant.ok ? meant.value.words : sentence(meant.refusal)}
      </p>
    </form>
  );
}

interface Meant {
  readonly moves: readonly Move[];
  /** What Enter will do, and what it costs together. */
  readonly words: string;
}

const UNSEEN = { shows: null, loads: [], checks: {}, hint: null } as const;

/** What a typed text comes to now. Refuses as `parseMoves`, and as the first move that cannot be made. */
function meantBy(attempt: Attempt, typed: string): Outcome<Meant> {
  const { circuit } = attempt.exercise;
  const moves = parseMoves(circuit, typed, attempt.condition);
  if (!moves.ok) return moves;
  let now = attempt;
  for (const move of moves.value) {
    const refusal = refusalOf(now, move);
    if (refusal) return { ok: false, refusal };
    now = attemptAfter(now, { move, minutes: costOf(now, move), answer: UNSEEN, time: null });
  }
  const minutes = minutesText(now.minutes - attempt.minutes);
  return ok({
    moves: moves.value,
    words: `${moves.value.map((move) => moveWords(circuit, move)).join(", then ")}: ${minutes}. ${SAY.enter}`,
  });
}
