import { useEffect, useRef } from "react";
import { Icon } from "../panels/Icon.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { PrintChoices } from "./PrintChoices.tsx";
import { PrintPages } from "./PrintPages.tsx";

/** What to print, on what, and how it will look. Escape closes. */
export function PrintDialog() {
  const { dispatch } = useAppStore();
  const circuit = useApp(circuitNow);
  const hasPages = useApp(({ open }) => (open?.pages.answer?.length ?? 0) > 0 && open?.pages.isOld === false);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const close = (): void => dispatch({ do: "close-print" });
  return (
    <dialog
      className="card print-dialog"
      ref={dialog}
      aria-label="Print"
      // Closed by itself it would tell so only a little later, and a key pressed meanwhile would count as the dialog's.
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
      onClose={close}
    >
      <header className="print-head">
        <h2>Print</h2>
        <button type="button" className="icon-button" aria-label="Close" title="Close (Esc)" onClick={close}>
          <Icon name="close" />
        </button>
      </header>
      <div className="print-body">
        <div className="print-choices">
          {circuit && <PrintChoices circuit={circuit} />}
          <div className="print-acts">
            <button
              type="button"
              className="button is-main"
              disabled={!hasPages}
              onClick={() => dispatch({ do: "save-pdf" })}
            >
              Save as PDF
            </button>
            <button type="button" className="button" disabled={!hasPages} onClick={() => window.print()}>
              <Icon name="print" />
              Print
            </button>
          </div>
          <p className="caption">The vehicle maker’s procedure, local codes and licensed practice come first.</p>
        </div>
        <PrintPages />
      </div>
    </dialog>
  );
}
