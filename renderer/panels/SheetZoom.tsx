import { FULL_SIZE } from "../canvas/viewport.ts";
import { useKeyOf } from "../keys/useKeyOf.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { Icon } from "./Icon.tsx";

/** The zoom in per cent, a click on it for 100 %; the whole page, and nearer or farther for who has no wheel. */
export function SheetZoom() {
  const keyOf = useKeyOf();
  const { dispatch } = useAppStore();
  const scale = useApp(({ open, learning }) => {
    const sight = open ?? learning?.sight;
    return sight?.viewports[sight.page]?.scale ?? null;
  });
  const percent = scale === null ? "" : `${Math.round((scale / FULL_SIZE) * 100)}\u00A0%`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as this row is
    <div className="sheet-zoom" role="group" aria-label="Zoom">
      <button
        type="button"
        className="icon-button is-small"
        aria-label="Farther"
        title={`Farther (${keyOf("farther")})`}
        onClick={() => dispatch({ do: "wish", want: { zoom: "out" } })}
      >
        <Icon name="less" size={16} />
      </button>
      <button
        type="button"
        className="count figures"
        aria-label={`Zoom ${percent}, show at 100\u00A0%`}
        title={`Show at 100\u00A0% (${keyOf("full-size")})`}
        onClick={() => dispatch({ do: "wish", want: { zoom: "full-size" } })}
      >
        {percent}
      </button>
      <button
        type="button"
        className="icon-button is-small"
        aria-label="Nearer"
        title={`Nearer (${keyOf("nearer")})`}
        onClick={() => dispatch({ do: "wish", want: { zoom: "in" } })}
      >
        <Icon name="add" size={16} />
      </button>
      <button
        type="button"
        className="icon-button is-small"
        aria-label="Whole page"
        title={`Whole page (${keyOf("whole-page")})`}
        onClick={() => dispatch({ do: "wish", want: { zoom: "fit" } })}
      >
        <Icon name="fit" size={16} />
      </button>
    </div>
  );
}
