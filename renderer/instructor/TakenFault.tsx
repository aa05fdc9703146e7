import type { Circuit } from "../../core/circuit/circuit.ts";
import { healFault } from "../../core/edit/commands/healFault.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { faultText } from "../../core/live/fault.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { faultsNow } from "../state/views.ts";
import type { Taken } from "./cupboard.ts";
import { useCupboard } from "./useCupboard.ts";
import { failsWords } from "./words.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly taken: Taken;
}

/** The fault in hand: what it makes fail, put into the drawing and out again, and on to an exercise. */
export function TakenFault({ circuit, taken }: Shown) {
  const { dispatch } = useAppStore();
  const { ask } = useCupboard();
  const { fault, seed, fails } = taken;
  const planted = new Set(useApp(faultsNow).map(faultText));
  const isIn = fault.faults.every((each) => planted.has(faultText(each)));
  const turn = (): void => {
    // What befalls a whole plug goes in and out in one step.
    const group = `cupboard ${fault.id} ${isIn ? "out" : "in"}`;
    for (const each of fault.faults) {
      const text = faultText(each);
      if (planted.has(text) !== isIn) continue;
      dispatch({
        do: "make",
        command: (bench) => (isIn ? healFault(bench, text) : plantFault(bench, text)),
        group,
      });
    }
  };
  return (
    <section className="cupboard-taken" aria-label="The fault in hand">
      <h3>{fault.title}</h3>
      <p className="small">
        {seed === null ? "Chosen by hand." : `Drawn by seed ${seed}.`} As text: <b className="together">{fault.id}</b>
      </p>
      {fails !== null && (
        <ul className="cupboard-fails" aria-label="What fails with it">
          {fails.length === 0 && <li className="small">No function check fails with it: nobody would complain.</li>}
          {fails.map((each) => (
            <li key={each.check}>
              <button
                type="button"
                className="menu-item"
                title="Set the drawing so"
                onClick={() => {
                  const check = circuit.checks.find(({ id }) => id === each.check);
                  if (check) dispatch({ do: "make", command: (bench) => setUp(bench, check.condition) });
                }}
              >
                {failsWords(circuit, each)}
              </button>
            </li>
          ))}
        </ul>
      )}
      <div className="value-acts">
        <button type="button" className="button is-low" onClick={turn}>
          {isIn ? "Take it out" : "Try it on the drawing"}
        </button>
        <button
          type="button"
          className="button is-low"
          disabled={fails === null || fails.length === 0}
          onClick={() => ask({ act: "draft", change: {} })}
        >
          Make an exercise
        </button>
        <button
          type="button"
          className="button is-low is-quiet"
          onClick={() => ask({ act: "set", change: { taken: null } })}
        >
          Put back
        </button>
      </div>
    </section>
  );
}
