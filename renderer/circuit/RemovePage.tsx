import type { Circuit, Page } from "../../core/circuit/circuit.ts";
import { removePage } from "../../core/edit/commands/removePage.ts";
import { counted } from "../words/figures.ts";
import { PageQuestion } from "./PageQuestion.tsx";
import { namedFew, standingOn } from "./pages.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly page: Page;
  readonly close: () => void;
}

/** What stands on a page that is to go, and where it can be moved to. */
export function RemovePage({ circuit, page, close }: Shown) {
  const standing = standingOn(circuit, page.id);
  return (
    <PageQuestion
      circuit={circuit}
      page={page}
      first={circuit.pages.find(({ id }) => id !== page.id)?.id ?? ""}
      label="Move to"
      act="Move and remove"
      make={(goal) => (bench) => removePage(bench, page.id, goal)}
      close={close}
    >
      <b>{counted(standing.length, "part stands", "parts stand")} on this page:</b> {namedFew(standing)}. Each goes to
      the same place of another page.
    </PageQuestion>
  );
}
