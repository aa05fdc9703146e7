import { useKeyOf } from "../keys/useKeyOf.ts";
import { Icon } from "../panels/Icon.tsx";
import { useAppStore } from "../state/AppContext.tsx";

/** Opens the help at the page of what is in front; at the same place in every bar. */
export function HelpButton() {
  const { dispatch } = useAppStore();
  const keyOf = useKeyOf();
  return (
    <button
      type="button"
      className="icon-button"
      aria-label="Help"
      title={`Help (${keyOf("help")})`}
      onClick={() => dispatch({ do: "open-help" })}
    >
      <Icon name="help" />
      <span className="words">Help</span>
    </button>
  );
}
