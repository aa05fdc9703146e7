import { useRef } from "react";
import { base64Of } from "../host/base64.ts";
import { Icon } from "../panels/Icon.tsx";
import { useModal } from "../panels/useModal.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { PrintChoices } from "./PrintChoices.tsx";
import { PrintPages } from "./PrintPages.tsx";
import { useOnPaper } from "./useOnPaper.ts";
import { useUnderPages } from "./useUnderPages.ts";

/** What to print, on what, and how it will look. Escape closes. */
export function PrintDialog() {
  const { dispatch } = useAppStore();
  const circuit = useApp(circuitNow);
  const hasPages = useApp(({ open }) => (open?.pages.answer?.length ?? 0) > 0 && open?.pages.isOld === false);
  const under = useUnderPages();
  const dialog = useRef<HTMLDialogElement>(null);
  useModal(dialog);
  const isOnPaper = useOnPaper(dialog);
  const close = (): void => dispatch({ do: "close-print" });
  const save = async (): Promise<void> => {
    const ready = [...under.pages].map(async ([page, { file }]) => ({
      page,
      jpeg: base64Of(new Uint8Array(await file.arrayBuffer())),
    }));
    dispatch({ do: "save-pdf", under: await Promise.all(ready) });
  };
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
      onClose={() => isOnPaper() || close()}
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
              disabled={!hasPages || under.isWorking}
              onClick={() => void save()}
            >
              Save as PDF
            </button>
            <button
              type="button"
              className="button"
              disabled={!hasPages || under.isWorking}
              onClick={() => window.print()}
            >
              <Icon name="print" />
              Print
            </button>
          </div>
          <button type="button" className="button is-quiet is-low" onClick={() => dispatch({ do: "open-export" })}>
            Export a page, pictures or lists
          </button>
          <p className="caption">The vehicle maker’s procedure, local codes and licensed practice come first.</p>
        </div>
        <PrintPages under={under} />
      </div>
    </dialog>
  );
}
