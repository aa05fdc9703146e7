import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import type { Shares } from "../../core/diagnose/flow/shares.ts";
import { ampsSaid, effectSaid, limitSaid, mostSaid } from "../../core/diagnose/flow/words.ts";
import { setUpWith } from "../../core/edit/commands/setUpWith.ts";
import { type Fault, faultText } from "../../core/live/fault.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { conditionPhrase } from "../words/condition.ts";
import { unbroken } from "../words/figures.ts";

/** Every load whose current runs through a place, what that place may carry, and what goes dead, weak or odd without it. */
export function SharesRows({ circuit, shares }: { readonly circuit: Circuit; readonly shares: Shares }) {
  const { opening, sharers, limits, effects } = shares;
  return (
    <>
      <p>{unbroken(mostSaid(circuit, shares))}</p>
      <ul className="small">
        {limits.map((limit) => (
          <li key={limit.target}>{unbroken(limitSaid(limit))}</li>
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
                faults={NONE}
                words={unbroken(`${part}, ${ampsSaid(amps)}`)}
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
              faults={opening.faults}
              words={unbroken(effectSaid(effect))}
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
  readonly faults: readonly Fault[];
  readonly words: string;
}

const NONE: readonly Fault[] = [];

/** A load; pressed, it is chosen on the drawing and the drawing set to just that position and those faults. */
function ShownRow({ circuit, part, condition, faults, words }: Row) {
  const { dispatch } = useAppStore();
  const make = useMake();
  return (
    <li>
      <button
        type="button"
        className="menu-item"
        onClick={() => {
          make((bench) => setUpWith(bench, condition, faults.map(faultText)));
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
