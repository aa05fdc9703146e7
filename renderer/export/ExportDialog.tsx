import { useRef, useState } from "react";
import { TAKE_HOME_WORDS } from "../../core/base/words/takeHome.ts";
import { Choice } from "../panels/Choice.tsx";
import { Icon } from "../panels/Icon.tsx";
import { useModal } from "../panels/useModal.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import type { Export, PictureInk } from "./exports.ts";

interface Row {
  readonly what: Export;
  readonly title: string;
  readonly about: string;
}

const PAGE: readonly Row[] = [
  {
    what: "take-home",
    title: "Take-home page",
    about: "One file that works by itself on a phone or a school laptop: switches, scenes, cautions. Faults stay here.",
  },
];
const PICTURES: readonly Row[] = [
  { what: "svg", title: "Drawing, SVG", about: "This page as it stands now, sharp at any size." },
  { what: "png-2", title: "Picture, PNG", about: "The same for a slide, twice the pixels of a screen." },
  { what: "png-4", title: "Large picture, PNG", about: "Four times the pixels, for print." },
  { what: "moving", title: "Moving picture, GIF", about: "All scenes on this page, one after the other." },
];
const LISTS: readonly Row[] = [
  { what: "wires", title: "Wire list, CSV", about: "Every wire with its ends, colour, size and length." },
  { what: "nets", title: "Net list, text", about: "What is joined to what, every plug home." },
];

/** Files to hand on: a page that works by itself, pictures, lists. Escape closes; the focus goes back to where it was. */
export function ExportDialog() {
  const { dispatch } = useAppStore();
  const dialog = useRef<HTMLDialogElement>(null);
  const theme = useApp((state) => state.theme);
  const hasScenes = useApp((state) => (circuitNow(state)?.scenes.length ?? 0) > 0);
  const [ink, setInk] = useState<PictureInk>(theme);
  useModal(dialog);
  const close = (): void => dispatch({ do: "close-export" });
  const rows = (all: readonly Row[]) =>
    all.map(({ what, title, about }) => (
      <button
        key={what}
        type="button"
        className="export-row"
        onClick={() => dispatch({ do: "export", what, palette: ink })}
      >
        <Icon name="save" />
        <span>
          <b>{title}</b>
          <span className="small">{about}</span>
        </span>
      </button>
    ));
  return (
    <dialog
      className="card export-dialog"
      ref={dialog}
      aria-label="Export"
      // As the print dialog: a key right after Escape is not the dialog's.
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
      onClose={close}
    >
      <header className="print-head">
        <h2>Export</h2>
        <button type="button" className="icon-button" aria-label="Close" title="Close (Esc)" onClick={close}>
          <Icon name="close" />
        </button>
      </header>
      <div className="export-body">
        <section aria-label="To take away">{rows(PAGE)}</section>
        <section aria-label="Pictures">
          <h3>Pictures</h3>
          <Choice
            title="Ink"
            now={ink}
            choices={[
              ["light", "Light"],
              ["dark", "Dark"],
              ["black", "Black"],
            ]}
            onChoose={setInk}
          />
          {rows(PICTURES.filter(({ what }) => what !== "moving" || hasScenes))}
        </section>
        <section aria-label="Lists">
          <h3>Lists</h3>
          {rows(LISTS)}
        </section>
        <p className="caption">{TAKE_HOME_WORDS.deference}</p>
      </div>
    </dialog>
  );
}
