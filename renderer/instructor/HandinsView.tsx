import { type DragEvent, useCallback, useEffect, useRef } from "react";
import { HelpButton } from "../help/HelpButton.tsx";
import { Empty } from "../panels/Empty.tsx";
import { Icon } from "../panels/Icon.tsx";
import { ThemeButton } from "../panels/ThemeButton.tsx";
import { ExercisesIn } from "./ExercisesIn.tsx";
import { HandinTable } from "./HandinTable.tsx";
import { chooseFiles, takeFiles } from "./handinFiles.ts";
import { markedHandins } from "./handins.ts";
import { Progress } from "./Progress.tsx";
import { RouteView } from "./RouteView.tsx";
import { TaskList } from "./TaskList.tsx";
import { TaskProgress } from "./TaskProgress.tsx";
import { useHandins } from "./useHandins.ts";

/** The instructor's desk: the hand-ins of a class, graded, and the route of any of them move by move. */
export function HandinsView() {
  const { desk, ask } = useHandins();
  const head = useRef<HTMLHeadingElement>(null);
  const take = useCallback((files: readonly File[]) => void takeFiles(files).then(ask), [ask]);
  useEffect(() => {
    const before = document.activeElement;
    head.current?.focus();
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus({ preventScroll: true });
    };
  }, []);
  const looked = useRef<number | null>(null);
  useEffect(() => {
    // Whoever comes back from a route goes on where it was opened.
    if (desk.shown === null && looked.current !== null)
      document.querySelector<HTMLElement>(`[data-handin="${looked.current}"]`)?.focus();
    looked.current = desk.shown;
  }, [desk.shown]);
  const shown = desk.handins.find(({ key }) => key === desk.shown);
  const hasTable = markedHandins(desk).length > 0;
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    take([...event.dataTransfer.files]);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping files is a help beside "Open files"
    <div className="handins" onDrop={drop} onDragOver={(event) => event.preventDefault()}>
      <header className="bar library-bar">
        <div className="handins-title">
          <button type="button" className="button is-quiet" onClick={() => ask({ act: "leave" })}>
            <Icon name="back" size={16} />
            Back
          </button>
          <h1 ref={head} tabIndex={-1}>
            Hand-ins
          </h1>
        </div>
        <div className="acts">
          {hasTable && (
            <>
              <button type="button" className="button is-quiet" onClick={() => ask({ act: "save", as: "csv" })}>
                Save as CSV
              </button>
              <button type="button" className="button" onClick={() => ask({ act: "save", as: "pdf" })}>
                <Icon name="print" />
                Print as PDF
              </button>
            </>
          )}
          <ThemeButton />
          <HelpButton />
          <button type="button" className="button is-main" onClick={() => chooseFiles(take)}>
            Open files
          </button>
        </div>
      </header>
      {shown?.marked?.grade ? (
        <RouteView key={shown.key} marked={shown.marked} />
      ) : (
        <main className="handins-body">
          <div className="handins-side">
            <ExercisesIn />
            <TaskList />
          </div>
          <section className="handins-class" aria-label="The class">
            {desk.trouble !== null && (
              <p className="error" role="alert">
                <span>
                  <b>The program itself failed here.</b> {desk.trouble}
                </span>
              </p>
            )}
            {desk.done !== null && (
              <Progress words="Grading" done={desk.done} stop={() => ask({ act: "stop-grading" })} />
            )}
            {desk.handins.length === 0 ? (
              <Empty title="No hand-ins yet">
                Open the files that learners handed in, many at once, together with the exercise that they are of:
                Anna.handin.json, Horns.exercise.json. They can be dropped here too.
              </Empty>
            ) : (
              <HandinTable />
            )}
            <TaskProgress />
          </section>
        </main>
      )}
    </div>
  );
}
