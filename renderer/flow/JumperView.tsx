import { sentence } from "../../core/base/words.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { JumperCheck } from "../../core/diagnose/flow/jumper.ts";
import { jumperCautionSaid, jumperEffectSaid, jumperSaid, limitSaid } from "../../core/diagnose/flow/words.ts";
import { Caution } from "../panels/Caution.tsx";
import { Working } from "../panels/Working.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { conditionNow, jumperNow, notProbedNow } from "../state/views.ts";
import { conditionPhrase } from "../words/condition.ts";
import { unbroken } from "../words/figures.ts";
import { JumperEnd } from "./JumperEnd.tsx";

/** Ratings of the lead's own fuse that are offered, amps; an ordinary jumper has the first. */
const RATINGS = [5, 7.5, 10, 15, 20, 30];
/** Fuses and wires that are listed at most. */
const MOST_LIMITS = 4;

/** What a jumper lead between two points would do, before it is clipped on. */
export function JumperView({ circuit }: { readonly circuit: Circuit }) {
  const { dispatch } = useAppStore();
  const condition = useApp(conditionNow);
  const notProbed = useApp(notProbedNow);
  const fuseAmps = useApp(({ open }) => open?.jumper.fuseAmps ?? null);
  const isNamed = useApp(({ open }) => open !== null && open.jumper.from !== "" && open.jumper.to !== "");
  const { answer, isOld, trouble } = useApp(jumperNow);
  if (notProbed !== null) return null;
  return (
    <section className="jumper" aria-label="Jumper">
      <h2 className="place-name">A jumper between two points</h2>
      <p className="small">What would flow, before it is clipped on, as the drawing is set now.</p>
      <JumperEnd end="from" words="From" usual="K1.30, X5-6 or battery +" />
      <JumperEnd end="to" words="To" usual="another point" />
      <label className="field">
        <span className="jumper-end-words">Lead</span>
        <select
          value={fuseAmps ?? ""}
          onChange={({ target: { value } }) =>
            dispatch({ do: "set-jumper", jumper: { fuseAmps: value === "" ? null : Number(value) } })
          }
        >
          {RATINGS.map((amps) => (
            <option key={amps} value={amps}>
              with its own fuse, {amps} A
            </option>
          ))}
          <option value="">bare, without a fuse</option>
        </select>
      </label>
      <div aria-live="polite">
        {trouble !== null && <p className="error">The jumper could not be worked out: {trouble}</p>}
        {isNamed && isOld && <Working words="Trying the jumper" />}
        {isNamed && !isOld && answer && !answer.ok && <p className="error">{sentence(answer.refusal)}</p>}
        {isNamed && !isOld && answer?.ok && <Answer check={answer.value} words={conditionPhrase(circuit, condition)} />}
      </div>
    </section>
  );
}

interface Answered {
  readonly check: JumperCheck;
  /** The condition it holds in. */
  readonly words: string;
}

function Answer({ check, words }: Answered) {
  const { from, to, cautions, limits, effects } = check;
  return (
    <>
      <p className="caption">
        {from} to {to}. {words}.
      </p>
      <p className="jumper-said">{unbroken(jumperSaid(check))}</p>
      {cautions.map((caution) => (
        <Caution key={JSON.stringify(caution)}>{jumperCautionSaid(caution)}</Caution>
      ))}
      <ul className="small">
        {effects.map((effect) => (
          <li key={effect.part}>{unbroken(jumperEffectSaid(effect))}</li>
        ))}
        {limits.slice(0, MOST_LIMITS).map((limit) => (
          <li key={limit.target}>{unbroken(limitSaid(limit))}</li>
        ))}
      </ul>
    </>
  );
}
