import { HelpButton } from "../help/HelpButton.tsx";
import { useKeyOf } from "../keys/useKeyOf.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { circuitNow } from "../state/views.ts";
import { Brand } from "./Brand.tsx";
import { FindBox } from "./FindBox.tsx";
import { Icon } from "./Icon.tsx";
import { PageTabs } from "./PageTabs.tsx";
import { SettingsButton } from "./SettingsButton.tsx";
import { ThemeButton } from "./ThemeButton.tsx";
import { UndoRedo } from "./UndoRedo.tsx";

/** The bar of the bench: back to the library, the pages, undo and redo, find, light or dark, print. */
export function Bar() {
  const { dispatch } = useAppStore();
  const keyOf = useKeyOf();
  const title = useApp((state) => circuitNow(state)?.title ?? "");
  return (
    <header className="bar">
      <h1 className="unseen">{title}</h1>
      <Brand />
      <PageTabs />
      <div className="acts">
        <UndoRedo />
        <FindBox />
        <ThemeButton />
        <SettingsButton />
        <HelpButton />
        <button
          type="button"
          className="icon-button"
          aria-label="Class view"
          title={`Class view (${keyOf("class")})`}
          onClick={() => {
            dispatch({ do: "open-panel", panel: "class" });
            dispatch({ do: "open-class", where: "any" });
          }}
        >
          <Icon name="class" />
          <span className="words">Class</span>
        </button>
        <button type="button" className="button acts-print" onClick={() => dispatch({ do: "open-print" })}>
          <Icon name="print" />
          Print
        </button>
      </div>
    </header>
  );
}
