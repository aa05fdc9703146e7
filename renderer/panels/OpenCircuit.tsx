import { ClassHere } from "../class/ClassHere.tsx";
import { ExportDialog } from "../export/ExportDialog.tsx";
import { PrintDialog } from "../print/PrintDialog.tsx";
import { BringIn } from "../printed/BringIn.tsx";
import { useApp } from "../state/AppContext.tsx";
import { BenchView } from "./BenchView.tsx";

/** A circuit that is open: its bench, and what lies over that. */
export function OpenCircuit() {
  const isPrinting = useApp((state) => state.isPrinting);
  const isExporting = useApp((state) => state.isExporting);
  const bringing = useApp((state) => state.bringing);
  const isClassHere = useApp(({ classroom }) => classroom.where === "here");
  return (
    <>
      <BenchView />
      {isPrinting && <PrintDialog />}
      {isExporting && <ExportDialog />}
      {bringing && <BringIn files={bringing} />}
      {isClassHere && <ClassHere />}
    </>
  );
}
