import type { ComponentType } from "react";
import { useKeptFocus } from "../panels/useKeptFocus.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { LearnerHead } from "./LearnerHead.tsx";
import { LEARNER_VIEWS, type LearnerView } from "./learning.ts";
import { RouteView } from "./RouteView.tsx";
import { useLearning } from "./useLearning.ts";
import { VerdictView } from "./VerdictView.tsx";
import { WorkView } from "./WorkView.tsx";

const VIEWS: Readonly<Record<LearnerView, { readonly title: string; readonly View: ComponentType }>> = {
  work: { title: "On the vehicle", View: WorkView },
  done: { title: "Done so far", View: RouteView },
  verdict: { title: "Verdict", View: VerdictView },
};

/** What stands beside the learner's drawing: the complaint and the minutes, over one view at a time. */
export function LearnerSide() {
  const { dispatch } = useAppStore();
  const shown = useLearning(({ sight }) => sight.view);
  const done = useLearning(({ attempt }) => attempt.route.length);
  const { title, View } = VIEWS[shown];
  const view = useKeptFocus<HTMLElement>();
  return (
    <aside className="side" aria-label="Beside the drawing">
      <LearnerHead />
      <nav className="views" aria-label="Views">
        <div className="tabs-row">
          {LEARNER_VIEWS.map((each) => (
            <button
              key={each}
              type="button"
              className={each === shown ? "tab is-shown" : "tab"}
              aria-current={each === shown ? "true" : undefined}
              onClick={() => dispatch({ do: "learner-sees", sees: { view: each } })}
            >
              {VIEWS[each].title}
              {each === "done" && done > 0 && <span className="tab-number figures">{done}</span>}
            </button>
          ))}
        </div>
      </nav>
      <section className="view" aria-label={title} ref={view} tabIndex={-1}>
        <View />
      </section>
    </aside>
  );
}
