import { useId, useState } from "react";
import type { Outcome } from "../../core/base/outcome.ts";
import { sentence } from "../../core/base/words.ts";
import type { Suspect } from "../../core/diagnose/step.ts";
import { kindNameOf } from "../../core/diagnose/weighing.ts";
import { factorOf } from "../../core/diagnose/weightText.ts";
import { dropWeight } from "../../core/edit/commands/dropWeight.ts";
import { setWeight } from "../../core/edit/commands/setWeight.ts";
import { targetOf } from "../../core/live/fault.ts";
import { Icon } from "../panels/Icon.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { isToldOf } from "../state/reduceBench.ts";
import { benchOf } from "../state/state.ts";
import { factorFor } from "../state/weighingNow.ts";

const NO_WEIGHTS: readonly never[] = [];

/** How many times as likely as guessed a suspect is, on this circuit or in this shop: typed with its source, or taken back. */
export function SuspectWeight({ suspect }: { readonly suspect: Suspect }) {
  const { dispatch, getState } = useAppStore();
  const weights = useApp((state) => benchOf(state)?.weights ?? NO_WEIGHTS);
  const circuit = useApp((state) => benchOf(state)?.circuit ?? null);
  const shop = useApp(({ settings }) => settings.shop);
  const [fault] = suspect.faults;
  const own = fault ? `${fault.target}:${fault.mode}` : "";
  const kind = fault && circuit ? kindNameOf(circuit, targetOf(circuit, fault.target)) : null;
  const ofKind = fault && kind !== null ? `${kind}:${fault.mode}` : "";
  const onCircuit = factorFor(weights, own);
  const inShop = factorFor(shop, ofKind);
  const [times, setTimes] = useState("");
  const [source, setSource] = useState("");
  const [trouble, setTrouble] = useState<string | null>(null);
  const id = useId();
  if (!fault || suspect.faults.length > 1) return null;
  const told = (outcome: Outcome<unknown>): void => {
    setTrouble(!outcome.ok && isToldOf(outcome.refusal) ? sentence(outcome.refusal) : null);
    if (outcome.ok) {
      setTimes("");
      setSource("");
    }
  };
  const onThis = (): void => {
    const bench = benchOf(getState());
    if (!bench) return;
    const edit = setWeight(bench, own, times, source);
    told(edit);
    if (edit.ok) dispatch({ do: "make", command: (now) => setWeight(now, own, times, source) });
  };
  const others = shop.filter(({ of }) => of !== ofKind);
  const onShop = (): void => {
    const factor = factorOf(ofKind, times, source, null);
    told(factor);
    if (factor.ok) dispatch({ do: "set", settings: { shop: [...others, factor.value] } });
  };
  return (
    <details className="suspect-weight">
      <summary className="small">
        <Icon name="onward" size={16} />
        Its weight is a guess; set another
      </summary>
      <div className="weight-fields">
        <label className="small">
          Times the guess
          <span className="field">
            <input
              value={times}
              placeholder="3"
              inputMode="decimal"
              aria-invalid={trouble !== null}
              aria-describedby={trouble === null ? undefined : id}
              onChange={(event) => setTimes(event.target.value)}
            />
          </span>
        </label>
        <label className="small">
          Known from
          <span className="field">
            <input
              value={source}
              placeholder="bulletin 12, own records"
              onChange={(event) => setSource(event.target.value)}
            />
          </span>
        </label>
      </div>
      {trouble !== null && (
        <p className="value-trouble small" id={id} role="alert">
          {trouble}
        </p>
      )}
      <div className="value-acts">
        <button type="button" className="button is-low" onClick={onThis}>
          On this circuit
        </button>
        {ofKind !== "" && (
          <button type="button" className="button is-low" onClick={onShop}>
            For every {kind?.replaceAll("-", " ")}
          </button>
        )}
        {onCircuit && (
          <button
            type="button"
            className="button is-quiet is-low"
            onClick={() => dispatch({ do: "make", command: (bench) => dropWeight(bench, own) })}
          >
            Take {onCircuit.factor} times back
          </button>
        )}
        {inShop && (
          <button
            type="button"
            className="button is-quiet is-low"
            onClick={() => dispatch({ do: "set", settings: { shop: others } })}
          >
            Take the shop’s {inShop.factor} times back
          </button>
        )}
      </div>
    </details>
  );
}
