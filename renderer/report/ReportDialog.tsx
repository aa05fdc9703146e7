import "../style/report.css";
import { useRef, useState } from "react";
import { REPORT_WORDS as WORDS } from "../../core/base/words/report.ts";
import { Icon } from "../panels/Icon.tsx";
import { useModal } from "../panels/useModal.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";

/** The report of the last fault of the program itself, to be read, copied or saved by the person alone. Escape closes. */
export function ReportDialog() {
  const { dispatch } = useAppStore();
  const report = useApp((state) => state.report);
  const dialog = useRef<HTMLDialogElement>(null);
  const text = useRef<HTMLTextAreaElement>(null);
  const [isCopied, setCopied] = useState(false);
  const close = (): void => dispatch({ do: "close-report" });
  useModal(dialog);
  if (!report) return null;
  const copy = (): void => {
    text.current?.select();
    // No permission to the clipboard is given to any page; what is chosen may always be copied.
    setCopied(document.execCommand("copy"));
  };
  return (
    <dialog
      className="card report-dialog"
      ref={dialog}
      aria-label={WORDS.dialog}
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
      onClose={close}
    >
      <header className="print-head">
        <h2>{WORDS.dialog}</h2>
        <button type="button" className="icon-button" aria-label={WORDS.close} title="Close (Esc)" onClick={close}>
          <Icon name="close" />
        </button>
      </header>
      <p>{WORDS.about}</p>
      <textarea ref={text} readOnly value={report.text} aria-label={WORDS.dialog} spellCheck={false} />
      <p className="small">{report.file === null ? WORDS.notKept : WORDS.lies(report.file)}</p>
      <p className="report-acts">
        <button type="button" className="button is-main" onClick={() => dispatch({ do: "save-report" })}>
          {WORDS.save}
        </button>
        <button type="button" className="button" onClick={copy}>
          {WORDS.copy}
        </button>
        <span role="status">{isCopied ? WORDS.copied : ""}</span>
      </p>
    </dialog>
  );
}
