import { lazy, Suspense } from "react";
import { ClassHere } from "./class/ClassHere.tsx";
import { ExportDialog } from "./export/ExportDialog.tsx";
import { HandinsView } from "./instructor/HandinsView.tsx";
import { KeySheet } from "./keys/KeySheet.tsx";
import { LearnerView } from "./learner/LearnerView.tsx";
import { LibraryView } from "./library/LibraryView.tsx";
import { BenchView } from "./panels/BenchView.tsx";
import { DropZone } from "./panels/DropZone.tsx";
import { FailureGuard } from "./panels/FailureGuard.tsx";
import { LiveRegion } from "./panels/LiveRegion.tsx";
import { Notices } from "./panels/Notices.tsx";
import { PrintDialog } from "./print/PrintDialog.tsx";
import { BringIn } from "./printed/BringIn.tsx";
import { useApp, useAppStore } from "./state/AppContext.tsx";

/** Read when first wanted: it is no part of what a page starts with. */
const ReportDialog = lazy(async () => ({ default: (await import("./report/ReportDialog.tsx")).ReportDialog }));

/** The whole page: the bench where a circuit is open, else the library. */
export function App() {
  const { dispatch } = useAppStore();
  const isOpen = useApp(({ open }) => open !== null);
  const isLearning = useApp(({ learning }) => learning !== null);
  const isMarking = useApp(({ handins }) => handins.isShown);
  const isPrinting = useApp((state) => state.isPrinting);
  const isExporting = useApp((state) => state.isExporting);
  const bringing = useApp((state) => state.bringing);
  const isShowingKeys = useApp((state) => state.isShowingKeys);
  const hasReport = useApp((state) => state.report !== null);
  const isShowingReport = useApp((state) => state.isShowingReport);
  const isClassHere = useApp(({ classroom }) => classroom.where === "here");
  return (
    <DropZone>
      <FailureGuard
        of={isMarking ? "desk" : isOpen ? "bench" : isLearning ? "exercise" : "library"}
        leave={() => dispatch(isMarking ? { do: "handins", act: { act: "leave" } } : { do: "close" })}
        showReport={hasReport ? () => dispatch({ do: "show-report" }) : null}
      >
        {isMarking ? <HandinsView /> : isOpen ? <BenchView /> : isLearning ? <LearnerView /> : <LibraryView />}
        {isPrinting && <PrintDialog />}
        {isExporting && <ExportDialog />}
        {bringing && isOpen && <BringIn files={bringing} />}
        {isShowingKeys && <KeySheet />}
        {isClassHere && <ClassHere />}
      </FailureGuard>
      <Suspense>{isShowingReport && <ReportDialog />}</Suspense>
      <Notices />
      <LiveRegion />
    </DropZone>
  );
}
