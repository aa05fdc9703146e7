import { useEffect, useRef } from "react";
import { HelpButton } from "../help/HelpButton.tsx";
import { useKeyOf } from "../keys/useKeyOf.ts";
import { Icon } from "../panels/Icon.tsx";
import { Mark } from "../panels/Mark.tsx";
import { SettingsButton } from "../panels/SettingsButton.tsx";
import { ThemeButton } from "../panels/ThemeButton.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";

/** The bar of the library: search, light or dark, settings, open a file. */
export function LibraryBar() {
  const keyOf = useKeyOf();
  const { dispatch } = useAppStore();
  const search = useApp(({ shelf }) => shelf.search);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    const find = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "f") return;
      event.preventDefault();
      field.current?.focus();
    };
    document.addEventListener("keydown", find);
    return () => document.removeEventListener("keydown", find);
  }, []);
  return (
    <header className="bar library-bar">
      <div className="brand">
        <Mark />
        <h1 className="brand-name">Wirefathom</h1>
      </div>
      <search className="library-search">
        <label className="field">
          <Icon name="find" />
          <input
            ref={field}
            type="search"
            value={search}
            placeholder="Find a job, a circuit, a part, a wire colour, a connector"
            aria-label="Find a job, a circuit, a part, a wire colour, a connector"
            onChange={(event) => dispatch({ do: "search", words: event.target.value })}
            onKeyDown={(event) => event.key === "Escape" && dispatch({ do: "search", words: "" })}
          />
          <span className="key-cap" aria-hidden="true">
            {keyOf("find")}
          </span>
        </label>
      </search>
      <div className="acts">
        <ThemeButton />
        <SettingsButton />
        <HelpButton />
        <button
          type="button"
          className="button is-quiet"
          title="Grade what a class handed in"
          onClick={() => dispatch({ do: "handins", act: { act: "show" } })}
        >
          Hand-ins
        </button>
        <button type="button" className="button acts-print" onClick={() => dispatch({ do: "choose-file" })}>
          Open a file
        </button>
        <button type="button" className="button is-main" onClick={() => dispatch({ do: "new-circuit" })}>
          New circuit
        </button>
      </div>
    </header>
  );
}
