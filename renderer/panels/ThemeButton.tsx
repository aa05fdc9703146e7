import { useApp, useAppStore } from "../state/AppContext.tsx";
import { Icon } from "./Icon.tsx";

/** Changes between the light and the dark look. */
export function ThemeButton() {
  const { dispatch } = useAppStore();
  const theme = useApp((state) => state.theme);
  const other = theme === "light" ? "dark" : "light";
  const words = `Change to ${other}`;
  return (
    <button
      type="button"
      className="icon-button"
      aria-label={words}
      title={words}
      onClick={() => dispatch({ do: "set", settings: { theme: other } })}
    >
      <Icon name="light" />
      <span className="words">{other === "dark" ? "Dark" : "Light"}</span>
    </button>
  );
}
