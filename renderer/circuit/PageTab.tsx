import { type KeyboardEvent, useLayoutEffect, useRef, useState } from "react";
import type { Page } from "../../core/circuit/circuit.ts";
import { retitlePage } from "../../core/edit/commands/retitlePage.ts";
import { useAsk } from "../editor/useAsk.ts";
import { Icon } from "../panels/Icon.tsx";
import { Popover } from "../panels/Popover.tsx";
import { useAppStore } from "../state/AppContext.tsx";
import { PageMenu } from "./PageMenu.tsx";
import { Renaming } from "./Renaming.tsx";

interface Shown {
  readonly page: Page;
  /** Counted from 1. */
  readonly number: number;
  readonly isShown: boolean;
}

/** The tab of a page. A double click or F2 renames it where it stands; the one shown has a menu, a right press opens it. */
export function PageTab({ page, number, isShown }: Shown) {
  const { dispatch } = useAppStore();
  const ask = useAsk();
  const [isRenaming, setIsRenaming] = useState(false);
  const [wantsMenu, setWantsMenu] = useState(false);
  const holder = useRef<HTMLDivElement>(null);
  const show = (): void => dispatch({ do: "show-page", page: page.id });
  const backToTab = useRef(false);
  useLayoutEffect(() => {
    if (isRenaming || !backToTab.current) return;
    backToTab.current = false;
    // Whoever left the field for another place keeps the focus there.
    if (document.activeElement === document.body) holder.current?.querySelector("button")?.focus();
  }, [isRenaming]);
  useLayoutEffect(() => {
    if (!wantsMenu || !isShown) return;
    setWantsMenu(false);
    holder.current?.querySelector<HTMLElement>(".popover > button[aria-expanded=false]")?.click();
  }, [wantsMenu, isShown]);
  if (isRenaming)
    return (
      <div className="page-tab">
        <Renaming
          name={`Title of page ${number}`}
          value={page.title}
          take={(typed) => ask((bench) => retitlePage(bench, page.id, typed))}
          close={() => {
            backToTab.current = true;
            setIsRenaming(false);
          }}
        />
      </div>
    );
  return (
    <div className={isShown ? "page-tab is-shown" : "page-tab"} ref={holder}>
      <button
        type="button"
        className={isShown ? "tab is-shown" : "tab"}
        aria-current={isShown ? "page" : undefined}
        title={isShown ? `${page.title} (F2 renames)` : page.title}
        onClick={show}
        onDoubleClick={() => setIsRenaming(true)}
        onContextMenu={(event) => {
          event.preventDefault();
          show();
          setWantsMenu(true);
        }}
        onKeyDown={(event: KeyboardEvent) => {
          if (event.key !== "F2") return;
          event.preventDefault();
          setIsRenaming(true);
        }}
      >
        <span className="tab-number figures">{number}</span>
        <bdi className="tab-title">{page.title}</bdi>
      </button>
      {isShown && (
        <Popover
          label={`More for page ${page.title}`}
          className="icon-button is-small"
          place="below"
          button={<Icon name="more" size={16} />}
        >
          {(close) => <PageMenu page={page} rename={() => setIsRenaming(true)} close={close} />}
        </Popover>
      )}
    </div>
  );
}
