import type { Page } from "../../core/circuit/circuit.ts";
import { PageTab } from "../circuit/PageTab.tsx";
import { useAddPage } from "../circuit/useAddPage.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { pagesNow } from "../state/views.ts";
import { Icon } from "./Icon.tsx";
import { Popover } from "./Popover.tsx";
import { useFitting } from "./useFitting.ts";

/** Room for the dots of further pages, and for the plus behind all of them, pixels. */
const MORE_WIDTH = 44;
const ADD_WIDTH = 40;

/** The pages as tabs; those without room stand in a menu at the end, the page shown never does. */
export function PageTabs() {
  const pages = useApp(pagesNow);
  const shown = useApp(({ open }) => open?.page ?? "");
  // The dots of the tab shown move all behind it, so that its place counts too.
  const key = [shown, ...pages.map(({ title }) => title)].join("\n");
  const { row, fitting } = useFitting(pages.length, key, MORE_WIDTH, ADD_WIDTH);
  const addPage = useAddPage();
  const numbered = pages.map((page, index): NumberedPage => ({ page, number: index + 1 }));
  const chosen = numbered.find(({ page }) => page.id === shown);
  const first = numbered.slice(0, fitting);
  const inRow = !chosen || first.includes(chosen) ? first : [...first.slice(0, Math.max(0, fitting - 1)), chosen];
  const inMenu = numbered.filter((each) => !inRow.includes(each));
  return (
    <nav className="tabs" aria-label="Pages">
      <div className="tabs-row" ref={row}>
        {inRow.map(({ page, number }) => (
          <PageTab key={page.id} page={page} number={number} isShown={page.id === shown} />
        ))}
        {inMenu.length > 0 && (
          <Popover label="More pages" className="icon-button" place="below" button={<Icon name="more" />}>
            {(close) => <MorePages pages={inMenu} close={close} />}
          </Popover>
        )}
        <button type="button" className="icon-button" aria-label="Add a page" title="Add a page" onClick={addPage}>
          <Icon name="add" />
        </button>
      </div>
    </nav>
  );
}

interface NumberedPage {
  readonly page: Page;
  readonly number: number;
}

function MorePages({ pages, close }: { readonly pages: readonly NumberedPage[]; readonly close: () => void }) {
  const { dispatch } = useAppStore();
  return (
    <ul className="menu">
      {pages.map(({ page, number }) => (
        <li key={page.id}>
          <button
            type="button"
            className="menu-item"
            onClick={() => {
              dispatch({ do: "show-page", page: page.id });
              close();
            }}
          >
            <span className="tab-number figures">{number}</span>
            <bdi className="menu-title">{page.title}</bdi>
          </button>
        </li>
      ))}
    </ul>
  );
}
