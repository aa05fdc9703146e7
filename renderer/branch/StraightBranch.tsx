import { type KeyboardEvent, useMemo, useRef } from "react";
import { carriersOf } from "../../core/live/branchRow.ts";
import { CoveredUp } from "../panels/CoveredUp.tsx";
import { Empty } from "../panels/Empty.tsx";
import { NotProbed } from "../panels/NotProbed.tsx";
import { useApp } from "../state/AppContext.tsx";
import { circuitNow, coveredHere, notProbedNow } from "../state/views.ts";
import { BranchHead } from "./BranchHead.tsx";
import { BranchLineList, MainLine } from "./BranchLineList.tsx";
import { branchNow, loadNow } from "./branchNow.ts";
import { NoCurrent } from "./NoCurrent.tsx";
import { OtherPositions } from "./OtherPositions.tsx";

/**
 * The straight branch of a load: only what carries its current, in one line from battery + to battery −, and what
 * controls that, live with the bench. Arrow keys go along the rows.
 */
export function StraightBranch() {
  const circuit = useApp(circuitNow);
  const load = useApp(loadNow);
  const branch = useApp(branchNow);
  const main = useMemo(() => carriersOf(branch?.lines ?? []), [branch]);
  const notProbed = useApp(notProbedNow);
  const isCovered = useApp(coveredHere);
  const rows = useRef<HTMLDivElement>(null);
  if (!circuit) return null;
  if (notProbed !== null) return <NotProbed why={notProbed} />;
  if (isCovered) return <CoveredUp what="The branch is" />;
  if (load === null)
    return (
      <Empty title="This circuit has no loads yet">
        A branch follows the current of a load, such as a motor or a lamp, from battery + to battery −.
      </Empty>
    );
  const walk = (event: KeyboardEvent): void => {
    const step = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    const heads = [...(rows.current?.querySelectorAll<HTMLElement>(".branch-head") ?? [])];
    const at = heads.indexOf(document.activeElement as HTMLElement);
    if (step === undefined || at < 0) return;
    event.preventDefault();
    heads[at + step]?.focus();
  };
  return (
    <>
      <BranchHead circuit={circuit} load={load} branch={branch} />
      {/* biome-ignore lint/a11y/noStaticElementInteractions: arrow keys are a help beside Tab */}
      <div className="view-scroll branch" ref={rows} onKeyDown={walk}>
        {branch ? (
          <MainLine value={main}>
            {branch.lines.map((line, index) => (
              <section key={index} aria-label={index === 0 ? "Branch" : "Beside it"}>
                {index > 0 && <h2 className="place-name">Beside it</h2>}
                <BranchLineList circuit={circuit} line={line} controls={branch.controls} />
              </section>
            ))}
            <OtherPositions circuit={circuit} branch={branch} />
          </MainLine>
        ) : (
          <NoCurrent circuit={circuit} load={load} />
        )}
      </div>
    </>
  );
}
