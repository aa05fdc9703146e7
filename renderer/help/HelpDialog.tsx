import "../style/help.css";
import { useRef, useState } from "react";
import { HELP, type HelpTopic, HELP_WORDS as WORDS } from "../../core/base/words/help/index.ts";
import { TAKE_HOME_WORDS } from "../../core/base/words/takeHome.ts";
import { Icon } from "../panels/Icon.tsx";
import { useModal } from "../panels/useModal.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { About } from "./About.tsx";
import { HelpBlocks } from "./HelpBlocks.tsx";
import { HelpStates, HelpSymbols } from "./HelpSymbols.tsx";
import { bestOf, helpFor } from "./search.ts";

/** The help, over the work and without touching it: pages by heading, a search, the page itself. Escape closes. */
export function HelpDialog({ topic }: { readonly topic: HelpTopic }) {
  const { dispatch } = useAppStore();
  const dialog = useRef<HTMLDialogElement>(null);
  const article = useRef<HTMLElement>(null);
  const [typed, setTyped] = useState("");
  const close = (): void => dispatch({ do: "close-help" });
  useModal(dialog, article);
  const show = (next: HelpTopic): void => {
    dispatch({ do: "open-help", topic: next });
    article.current?.scrollTo({ top: 0 });
  };
  const search = (words: string): void => {
    setTyped(words);
    const best = words.trim() === "" ? null : bestOf(helpFor(words), words);
    if (best) show(best);
  };
  return (
    <dialog
      className="card help-dialog"
      ref={dialog}
      aria-label={WORDS.help}
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
      onClose={close}
    >
      <header className="print-head">
        <h2>{WORDS.help}</h2>
        <label className="field help-search">
          <Icon name="find" size={16} />
          <input
            type="search"
            value={typed}
            placeholder={WORDS.example}
            aria-label={WORDS.search}
            autoComplete="off"
            spellCheck={false}
            onChange={(event) => search(event.target.value)}
            onKeyDown={(event) => {
              // A search field would keep the first Escape to itself.
              if (event.key !== "Escape") return;
              event.preventDefault();
              close();
            }}
          />
        </label>
        <button type="button" className="icon-button" aria-label="Close" title="Close (Esc)" onClick={close}>
          <Icon name="close" />
        </button>
      </header>
      <div className="help-body">
        <Pages typed={typed} topic={topic} onShow={show} />
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
        <article className="help-page" ref={article} tabIndex={0} aria-labelledby="help-title">
          <h3 id="help-title">{HELP[topic].title}</h3>
          <HelpBlocks blocks={HELP[topic].blocks} />
          {topic === "states" && <HelpStates />}
          {topic === "symbols" && <HelpSymbols />}
          {topic === "about" && <About />}
          {topic !== "before" && (
            <p className="help-foot">
              {TAKE_HOME_WORDS.deference}{" "}
              <button
                type="button"
                className="button is-quiet is-low"
                onClick={() => {
                  show("before");
                  article.current?.focus();
                }}
              >
                {WORDS.before}
              </button>
            </p>
          )}
        </article>
      </div>
    </dialog>
  );
}

interface Listed {
  readonly typed: string;
  readonly topic: HelpTopic;
  readonly onShow: (topic: HelpTopic) => void;
}

function Pages({ typed, topic, onShow }: Listed) {
  const { dispatch } = useAppStore();
  const isHere = useApp(({ classroom }) => classroom.where === "here");
  const groups = helpFor(typed);
  return (
    <nav className="help-pages" aria-label={WORDS.pages}>
      {groups.length === 0 && <p role="status">{WORDS.none}</p>}
      {groups.map(({ title, topics }) => (
        <section key={title}>
          <h3 className="place-name">{title}</h3>
          <ul>
            {topics.map((each) => (
              <li key={each}>
                <button
                  type="button"
                  className={each === topic ? "menu-item is-chosen" : "menu-item"}
                  aria-current={each === topic ? "page" : undefined}
                  onClick={() => onShow(each)}
                >
                  {HELP[each].title}
                </button>
              </li>
            ))}
          </ul>
        </section>
      ))}
      {!isHere && (
        <button
          type="button"
          className="menu-item"
          onClick={() => {
            dispatch({ do: "close-help" });
            dispatch({ do: "open-keys" });
          }}
        >
          {WORDS.keys}
        </button>
      )}
    </nav>
  );
}
