import type { ComponentType } from "react";
import { StraightBranch } from "../branch/StraightBranch.tsx";
import { CircuitView } from "../circuit/CircuitView.tsx";
import { ClassView } from "../class/ClassView.tsx";
import { ReadingsView } from "../diagnose/ReadingsView.tsx";
import { SuspectsView } from "../diagnose/SuspectsView.tsx";
import { SharedPaths } from "../flow/SharedPaths.tsx";
import { FaultCupboard } from "../instructor/FaultCupboard.tsx";
import { InstrumentsView } from "../instruments/InstrumentsView.tsx";
import { JobHead } from "../job/JobHead.tsx";
import { PrintedView } from "../printed/PrintedView.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { PANELS, type Panel } from "../state/state.ts";
import { ConditionView } from "./ConditionView.tsx";
import { Faults } from "./Faults.tsx";
import { Icon } from "./Icon.tsx";
import { PartsList } from "./PartsList.tsx";
import { Popover } from "./Popover.tsx";
import { PositionTableView } from "./PositionTableView.tsx";
import { ProbeOrderView } from "./ProbeOrderView.tsx";
import { useFitting } from "./useFitting.ts";
import { useKeptFocus } from "./useKeptFocus.ts";
import { WhatWorks } from "./WhatWorks.tsx";

const VIEWS: Readonly<Record<Panel, { readonly title: string; readonly View: ComponentType }>> = {
  order: { title: "Probe order", View: ProbeOrderView },
  suspects: { title: "Suspects", View: SuspectsView },
  readings: { title: "Readings", View: ReadingsView },
  branch: { title: "Straight branch", View: StraightBranch },
  instruments: { title: "Instruments", View: InstrumentsView },
  shares: { title: "Shared paths", View: SharedPaths },
  works: { title: "What works", View: WhatWorks },
  table: { title: "Position table", View: PositionTableView },
  faults: { title: "Faults", View: Faults },
  cupboard: { title: "Fault cupboard", View: FaultCupboard },
  condition: { title: "Condition", View: ConditionView },
  class: { title: "Class", View: ClassView },
  list: { title: "List", View: PartsList },
  circuit: { title: "Circuit", View: CircuitView },
  printed: { title: "Printed pages", View: PrintedView },
};

/** Views that a job is worked on in: over them stands which one is in hand. */
const OF_A_JOB: readonly Panel[] = ["order", "suspects", "readings", "works"];

const MORE_WIDTH = 36;

/** What stands beside the drawing: one view at a time, chosen by words. */
export function SidePanel() {
  const panel = useApp(({ open }) => open?.panel ?? "order");
  const { row, fitting } = useFitting(PANELS.length, "views", MORE_WIDTH);
  const first = PANELS.slice(0, fitting);
  const inRow = first.includes(panel) ? first : [...first.slice(0, Math.max(0, fitting - 1)), panel];
  const inMenu = PANELS.filter((each) => !inRow.includes(each));
  const { title, View } = VIEWS[panel];
  const view = useKeptFocus<HTMLElement>();
  return (
    <aside className={panel === "table" ? "side is-table" : "side"} aria-label="Beside the drawing">
      <nav className="views" aria-label="Views">
        <div className="tabs-row" ref={row}>
          {inRow.map((each) => (
            <ViewTab key={each} panel={each} isShown={each === panel} />
          ))}
          {inMenu.length > 0 && (
            <Popover label="More views" className="icon-button is-small" place="below" button={<Icon name="more" />}>
              {(close) => <MoreViews panels={inMenu} close={close} />}
            </Popover>
          )}
        </div>
      </nav>
      {OF_A_JOB.includes(panel) && <JobHead />}
      <section className="view" aria-label={title} ref={view} tabIndex={-1}>
        <View />
      </section>
    </aside>
  );
}

function ViewTab({ panel, isShown }: { readonly panel: Panel; readonly isShown: boolean }) {
  const { dispatch } = useAppStore();
  return (
    <button
      type="button"
      className={isShown ? "tab is-shown" : "tab"}
      aria-current={isShown ? "true" : undefined}
      onClick={() => dispatch({ do: "open-panel", panel })}
    >
      {VIEWS[panel].title}
    </button>
  );
}

function MoreViews({ panels, close }: { readonly panels: readonly Panel[]; readonly close: () => void }) {
  const { dispatch } = useAppStore();
  return (
    <ul className="menu is-right">
      {panels.map((panel) => (
        <li key={panel}>
          <button
            type="button"
            className="menu-item"
            onClick={() => {
              dispatch({ do: "open-panel", panel });
              close();
            }}
          >
            {VIEWS[panel].title}
          </button>
        </li>
      ))}
    </ul>
  );
}
