import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import type { Shares } from "../../core/diagnose/flow/shares.ts";
import { ampsSaid, effectSaid, limitSaid, mostSaid } from "../../core/diagnose/flow/words.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { conditionPhrase } from "../words/condition.ts";

/** Every load whose current runs through a place, what that place may carry, and what goes dead, weak or odd without it. */
export function SharesRows({ circuit, shares }: { readonly circuit: Circuit; readonly shares: Shares }) {
  const { opening, sharers, limits, effects } = shares;
  return (
    <>
      <p>{mostSaid(circuit, shares)}</p>
      <ul className="small">
        {limits.map((limit) => (
          <li key={limit.target}>{limitSaid(limit)}</li>
        ))}
      </ul>
      {sharers.length > 0 && (
        <section aria-label="Loads">
          <h2 className="place-name">Loads that share it</h2>
          <ul>
            {sharers.map(({ part, amps, condition }) => (
              <ShownRow
                key={part}
                part={part}
                condition={condition}
                words={`${part}, ${ampsSaid(amps)}`}
                circuit={circuit}
              />
            ))}
          </ul>
        </section>
      )}
      <section aria-label="When it opens">
        <h2 className="place-name">With {opening.title}</h2>
        {effects.length === 0 && <p className="small">Nothing changes in any position.</p>}
        <ul>
          {effects.map((effect) => (
            <ShownRow
              key={`${effect.part} ${effect.verdict}`}
              part={effect.part}
              condition={effect.condition}
              words={effectSaid(effect)}
              circuit={circuit}
            />
          ))}
        </ul>
      </section>
    </>
  );
}

interface Row {
  readonly circuit: Circuit;
  readonly part: string;
  readonly condition: Condition;
  readonly words: string;
}

/** A load; pressed, it is chosen on the drawing and the drawing set to that position. */
function ShownRow({ circuit, part, condition, words }: Row) {
  const { dispatch } = useAppStore();
  const make = useMake();
  return (
    <li>
      <button
        type="button"
        className="menu-item"
        onClick={() => {
          make((bench) => setUp(bench, condition));
          dispatch({ do: "find", thing: { is: "part", id: part } });
        }}
        onPointerEnter={() => dispatch({ do: "hover", thing: { is: "part", id: part } })}
        onPointerLeave={() => dispatch({ do: "hover", thing: null })}
      >
        <span>
          {words}
          <span className="caption other-carriers">{conditionPhrase(circuit, condition)}</span>
        </span>
      </button>
    </li>
  );
}
