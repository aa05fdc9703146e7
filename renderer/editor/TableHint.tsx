import { Icon } from "../panels/Icon.tsx";
import { chosenWords } from "./tableWords.ts";

/** What the next press does; one line while nothing is chosen and while a circle is, so that nothing below it moves. */
export function TableHint({
  chosen,
  partners,
}: {
  readonly chosen: string | null;
  readonly partners: readonly string[];
}) {
  return (
    <div className={chosen === null ? "chart-hint" : "chart-hint is-chosen"} aria-live="polite">
      {chosen === null ? (
        "Choose two circles of a row, one after the other, to join or part them."
      ) : (
        <>
          <Icon name="note" />
          <span>{chosenWords(chosen, partners)}</span>
          <span className="chart-escape">
            <kbd className="key-cap">Esc</kbd> lets go
          </span>
        </>
      )}
    </div>
  );
}
