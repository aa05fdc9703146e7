import { sentence } from "../../core/base/words.ts";
import type { Problem } from "../../core/circuit/problem.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { thingNamed } from "../state/places.ts";
import { circuitNow, problemsNow } from "../state/views.ts";
import { counted } from "../words/figures.ts";
import { Icon } from "./Icon.tsx";
import { Popover } from "./Popover.tsx";

/** How many things of the drawing are wrong or not finished; opens the list, and a row goes there. Absent at none. */
export function LooseEnds() {
  const problems = useApp(problemsNow);
  const wrong = problems.filter(({ severity }) => severity === "problem").length;
  const loose = problems.length - wrong;
  if (problems.length === 0) return null;
  const words = [
    ...(wrong > 0 ? [counted(wrong, "problem")] : []),
    ...(loose > 0 ? [counted(loose, "loose end")] : []),
  ].join(", ");
  return (
    <Popover
      label={words}
      className="count"
      place="above"
      button={
        <>
          <Icon name="loose" size={16} />
          {words}
        </>
      }
    >
      {(close) => <Problems problems={problems} close={close} />}
    </Popover>
  );
}

function Problems({ problems, close }: { readonly problems: readonly Problem[]; readonly close: () => void }) {
  const { dispatch } = useAppStore();
  const circuit = useApp(circuitNow);
  return (
    <ul className="menu is-wide">
      {problems.map((problem) => {
        const thing = circuit && thingNamed(circuit, problem.at);
        return (
          <li key={`${problem.code} ${problem.at}`}>
            <button
              type="button"
              className="menu-item"
              disabled={!thing}
              onClick={() => {
                if (thing) dispatch({ do: "find", thing });
                close();
              }}
            >
              {sentence(problem)}
            </button>
          </li>
        );
      })}
    </ul>
  );
}
