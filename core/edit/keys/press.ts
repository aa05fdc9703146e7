/** What of a key press counts here. */
export interface KeyPress {
  readonly key: string;
  readonly code: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

/**
 * A press as the table of keys spells it: `Ctrl+Shift+Z`, `Shift+F10`, `?`. The command key counts as Ctrl; with a sign
 * Shift does not count, since where it is needed is the keyboard's affair, but for the first digit of the upper row.
 */
export function spelled({ key, code, shiftKey, ctrlKey, metaKey, altKey }: KeyPress): string {
  const held = [...(ctrlKey || metaKey ? ["Ctrl"] : []), ...(altKey ? ["Alt"] : [])];
  if (code === "Digit1" && shiftKey && held.length === 0) return "Shift+1";
  const isSign = key.length === 1 && key.toLowerCase() === key.toUpperCase();
  const name = key === " " ? "Space" : key.length === 1 ? key.toUpperCase() : key;
  return [...held, ...(shiftKey && !isSign ? ["Shift"] : []), name].join("+");
}

const NAMES: Readonly<Record<string, string>> = {
  Escape: "Esc",
  Delete: "Del",
  ContextMenu: "Menu",
  PageDown: "Page Down",
  PageUp: "Page Up",
  ArrowLeft: "Left",
  ArrowRight: "Right",
  ArrowUp: "Up",
  ArrowDown: "Down",
  "-": "\u2212",
};

/** A key of the table as it is printed on a keyboard of this platform: `Ctrl Shift Z`, or `Cmd Shift Z`. */
export function printed(spelling: string, isMac: boolean): string {
  const names = spelling.endsWith("++") ? [...spelling.slice(0, -2).split("+"), "+"] : spelling.split("+");
  const whole = spelling === "+" ? ["+"] : names;
  return whole.map((name) => (name === "Ctrl" && isMac ? "Cmd" : (NAMES[name] ?? name))).join(" ");
}
