import { useApp, useAppStore } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { CupboardList } from "./CupboardList.tsx";
import { DrawFault } from "./DrawFault.tsx";
import { ExerciseForm } from "./ExerciseForm.tsx";
import { TakenFault } from "./TakenFault.tsx";
import { useCupboard } from "./useCupboard.ts";

/** Every fault that the parts of the circuit know: to be chosen or drawn, tried on the drawing, and hidden in an exercise. */
export function FaultCupboard() {
  const { dispatch } = useAppStore();
  const circuit = useApp(circuitNow);
  const { cupboard } = useCupboard();
  if (!circuit || !cupboard) return null;
  const { taken, draft, trouble } = cupboard;
  if (draft && taken) return <ExerciseForm circuit={circuit} draft={draft} taken={taken} />;
  return (
    <>
      <header className="view-head">
        <div className="complaint">
          <h2>Fault cupboard</h2>
          <button
            type="button"
            className="button is-low is-quiet"
            title="Grade what a class handed in"
            onClick={() => dispatch({ do: "handins", act: { act: "show" } })}
          >
            Hand-ins
          </button>
        </div>
        <p className="small">
          All that can be wrong in this circuit. Take a fault, try it on the drawing, then hide it in an exercise.
        </p>
      </header>
      <div className="view-scroll cupboard">
        <DrawFault circuit={circuit} cupboard={cupboard} />
        {trouble !== null && (
          <p className="error" role="alert">
            <span>
              <b>The program itself failed here.</b> {trouble}
            </span>
          </p>
        )}
        {taken && <TakenFault circuit={circuit} taken={taken} />}
        <CupboardList circuit={circuit} cupboard={cupboard} />
      </div>
    </>
  );
}
