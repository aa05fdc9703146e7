import { useRef, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { Choice } from "../panels/Choice.tsx";
import { Icon } from "../panels/Icon.tsx";
import { useModal } from "../panels/useModal.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { counted } from "../words/figures.ts";
import { GONE_WORDS } from "../words/gone.ts";
import { bringPages, type ChosenPage, type Where } from "./bringing.ts";
import { PageChooser } from "./PageChooser.tsx";
import { usePictures } from "./PicturesContext.tsx";
import { counted as fewEnough } from "./pageNumbers.ts";
import type { Source } from "./source.ts";
import { useSources } from "./useSources.ts";

/** Where files with printed pages become pages under the drawing: which of them, and under which page. Escape closes. */
export function BringIn({ files }: { readonly files: readonly File[] }) {
  const store = useAppStore();
  const { dispatch } = store;
  const pictures = usePictures();
  const title = useApp((state) => circuitNow(state)?.pages.find(({ id }) => id === state.open?.page)?.title ?? "");
  const { sources, refused, isReading } = useSources(files);
  const [chosen, setChosen] = useState<ReadonlyMap<Source, readonly number[]>>(new Map());
  const [where, setWhere] = useState<Where | null>(null);
  const [done, setDone] = useState<number | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const dialog = useRef<HTMLDialogElement>(null);
  const going = useRef(new AbortController());
  useModal(dialog);
  const pages = sources.flatMap((source) =>
    (chosen.get(source) ?? (source.pages === 1 ? [1] : [])).map((page): ChosenPage => ({ source, page })),
  );
  const goal = where ?? (pages.length > 1 ? "new" : "here");
  const close = (): void => {
    going.current.abort();
    dispatch({ do: "close-bring-in" });
  };
  const bring = async (): Promise<void> => {
    const few = fewEnough(pages.map(({ page }) => page));
    setTrouble(few.ok ? null : sentence(few.refusal));
    if (!few.ok) return;
    setDone(0);
    try {
      await bringChosen();
    } catch {
      setDone(null);
      setTrouble(GONE_WORDS);
    }
  };
  const bringChosen = async (): Promise<void> => {
    const told = await bringPages(pages, {
      store,
      pictures,
      where: goal,
      gone: going.current.signal,
      progress: setDone,
    });
    for (const { title, refusal } of told) {
      dispatch({ do: "tell", notice: { title: `${title}.`, words: sentence(refusal), isError: true } });
    }
    dispatch({ do: "close-bring-in" });
    dispatch({ do: "open-panel", panel: "printed" });
  };
  return (
    <dialog
      className="card print-dialog bring-in"
      ref={dialog}
      aria-label="Printed pages to bring in"
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
      onClose={close}
    >
      <header className="print-head">
        <h2>Printed pages to bring in</h2>
        <button type="button" className="icon-button" aria-label="Close" title="Close (Esc)" onClick={close}>
          <Icon name="close" />
        </button>
      </header>
      <div className="bring-in-body">
        {isReading && (
          <p className="small" role="status">
            Reading {counted(files.length, "file")}
          </p>
        )}
        {refused.map((told) => (
          <p key={refused.indexOf(told)} className="error" role="alert">
            <Icon name="note" size={16} />
            <span>
              <b>{told.name}.</b> {sentence(told.refusal)}
            </span>
          </p>
        ))}
        {sources.map((source) => (
          <PageChooser
            key={sources.indexOf(source)}
            source={source}
            chosen={chosen.get(source) ?? (source.pages === 1 ? [1] : [])}
            choose={(numbers) => setChosen((before) => new Map(before).set(source, numbers))}
          />
        ))}
      </div>
      <footer className="bring-in-foot">
        {sources.length > 0 && done === null && (
          <Choice
            title="Where"
            now={goal}
            choices={[
              ["here", `Under ${title}`],
              ["new", pages.length > 1 ? "Each under a new page" : "Under a new page"],
            ]}
            onChoose={setWhere}
          />
        )}
        <Trouble words={trouble} />
        {done === null ? (
          <div className="print-acts">
            <button type="button" className="button is-main" disabled={pages.length === 0} onClick={() => void bring()}>
              {pages.length === 0 ? "Choose pages" : `Bring in ${counted(pages.length, "page")}`}
            </button>
            <button type="button" className="button" onClick={close}>
              Cancel
            </button>
          </div>
        ) : (
          <div className="print-acts" role="status">
            <progress max={pages.length} value={done} aria-label="Pages brought in" />
            <span className="small figures">
              Page {Math.min(done + 1, pages.length)} of {pages.length}
            </span>
            <button type="button" className="button" onClick={() => going.current.abort()}>
              Stop
            </button>
          </div>
        )}
      </footer>
    </dialog>
  );
}
