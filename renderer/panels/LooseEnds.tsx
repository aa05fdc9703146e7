import { sentence } from "../../core/base/words.ts";
import { problemsOf } from "../../core/circuit/check.ts";
import type { Problem } from "../../core/circuit/problem.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { thingNamed } from "../state/places.ts";
import { circuitNow } from "../state/views.ts";
import { counted } from "../words/figures.ts";
import { Icon } from "./Icon.tsx";
import { Popover } from "./Popover.tsx";
import { useRested } from "./useRested.ts";

/** How many things of the drawing are wrong or not finished; opens the list, and a row goes there. Absent at none. */
export function LooseEnds() {
  const circuit = useRested(useApp(circuitNow));
  const problems = circuit ? problemsOf(circuit) : [];
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
          <Icon name={wrong > 0 ? "note" : "loose"} size={16} />
          {words}
        </>
      }
    >
      {(close) => <Problems problems={problems} close={close} />}
    </Popover>
  );
}

/** What each severity is called above its rows, the worse first. */
const GROUPS = [
  { severity: "problem", icon: "note", title: "problem", about: "wrong in the drawing" },
  { severity: "loose-end", icon: "loose", title: "loose end", about: "not finished yet" },
] as const;

function Problems({ problems, close }: { readonly problems: readonly Problem[]; readonly close: () => void }) {
  return GROUPS.map(({ severity, icon, title, about }) => {
    const here = problems.filter((each) => each.severity === severity);
    if (here.length === 0) return null;
    return (
      <section key={severity} aria-label={counted(here.length, title)}>
        <h3 className="place-name">
          <Icon name={icon} size={16} />
          {counted(here.length, title)}, {about}
        </h3>
        <ul className="menu is-wide">
          {here.map((problem) => (
            <ProblemRow key={`${problem.code} ${problem.at}`} problem={problem} close={close} />
          ))}
        </ul>
      </section>
    );
  });
}

function ProblemRow({ problem, close }: { readonly problem: Problem; readonly close: () => void }) {
  const { dispatch } = useAppStore();
  const circuit = useApp(circuitNow);
  const thing = circuit && thingNamed(circuit, problem.at);
  return (
    <li>
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
}
