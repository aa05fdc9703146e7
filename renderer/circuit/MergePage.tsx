import type { Circuit, Page } from "../../core/circuit/circuit.ts";
import { mergePages } from "../../core/edit/commands/mergePages.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { PageQuestion } from "./PageQuestion.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly page: Page;
  readonly close: () => void;
}

/** Into which page another one is merged; the page before it is offered first. */
export function MergePage({ circuit, page, close }: Shown) {
  const { dispatch } = useAppStore();
  const at = circuit.pages.indexOf(page);
  return (
    <PageQuestion
      circuit={circuit}
      page={page}
      first={(circuit.pages[at - 1] ?? circuit.pages[at + 1])?.id ?? ""}
      label="Merge into"
      act="Merge"
      make={(goal) => (bench) => mergePages(bench, page.id, goal)}
      onDone={(goal) => {
        dispatch({ do: "show-page", page: goal });
        dispatch({ do: "wish", want: { zoom: "fit" } });
      }}
      close={close}
    >
      <b>All of this page goes onto the other,</b> beside or below what stands there. Where two page links joined just
      these two, one wire takes their place if the wires at them are alike.
    </PageQuestion>
  );
}
