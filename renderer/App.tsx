import { Suspense } from "react";
import { KeySheet } from "./keys/KeySheet.tsx";
import { LibraryView } from "./library/LibraryView.tsx";
import { DropZone } from "./panels/DropZone.tsx";
import { FailureGuard } from "./panels/FailureGuard.tsx";
import { LiveRegion } from "./panels/LiveRegion.tsx";
import { Notices } from "./panels/Notices.tsx";
import { useApp, useAppStore } from "./state/AppContext.tsx";
import { HandinsView, HelpDialog, LearnerView, OpenCircuit, ReportDialog } from "./views.tsx";

/** The whole page: the bench where a circuit is open, else the library. */
export function App() {
  const { dispatch } = useAppStore();
  const isOpen = useApp(({ open }) => open !== null);
  const isLearning = useApp(({ learning }) => learning !== null);
  const isMarking = useApp(({ handins }) => handins.isShown);
  const isShowingKeys = useApp((state) => state.isShowingKeys);
  const hasReport = useApp((state) => state.report !== null);
  const help = useApp((state) => state.help);
  const isShowingReport = useApp((state) => state.isShowingReport);
  return (
    <DropZone>
      <FailureGuard
        of={isMarking ? "desk" : isOpen ? "bench" : isLearning ? "exercise" : "library"}
        leave={() => dispatch(isMarking ? { do: "handins", act: { act: "leave" } } : { do: "close" })}
        showReport={hasReport ? () => dispatch({ do: "show-report" }) : null}
      >
        <Suspense>
          {isMarking ? <HandinsView /> : isOpen ? <OpenCircuit /> : isLearning ? <LearnerView /> : <LibraryView />}
        </Suspense>
        {isShowingKeys && <KeySheet />}
      </FailureGuard>
      <Suspense>{help !== null && <HelpDialog topic={help} />}</Suspense>
      <Suspense>{isShowingReport && <ReportDialog />}</Suspense>
      <Notices />
      <LiveRegion />
    </DropZone>
  );
}
