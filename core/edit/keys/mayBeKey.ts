import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import type { KeyPlace } from "./rows.ts";

/** A spelling of a key that stands for itself: one sign, or a function key, with Ctrl or Shift. */
const SPELLING = /^(?<ctrl>Ctrl\+)?(?<shift>Shift\+)?(?<name>F(?:[1-9]|1[0-2])|[\p{L}\p{N}\p{P}\p{S}])$/u;

/**
 * What a browser or a system keeps for itself, wherever one of them does: new window and tab, close, quit, reload, address,
 * downloads, source, history, hide, minimise, tabs by number, what the clipboard has, and full screen. From general knowledge of
 * desktop systems and browsers, not from a list of one of them.
 */
const WITH_CTRL = new Set("NTWQRLJUHMACXV12345678");
const WITH_CTRL_SHIFT = new Set("NTWQRJIKCMPAOBDV");
const FUNCTION_KEYS: ReadonlySet<string> = new Set(["F3", "F5", "F6", "F7", "F10", "F11", "F12"]);

/** The same spelling where it can be the key of a row of this place; refuses with what is in the way. */
export function mayBeKey(key: string, place: KeyPlace): Outcome<string> {
  if (key.startsWith("Alt+") || key.startsWith("Ctrl+Alt+")) return refuse("key-system", { key });
  const { ctrl, shift, name } = SPELLING.exec(key)?.groups ?? {};
  if (name === undefined || name !== name.toUpperCase()) return refuse("key-standing", { key });
  if (isKept(name, ctrl !== undefined, shift !== undefined)) return refuse("key-system", { key });
  const isBare = ctrl === undefined && name.length === 1;
  return isBare && place === "window" ? refuse("key-bare", { key }) : ok(key);
}

function isKept(name: string, hasCtrl: boolean, hasShift: boolean): boolean {
  if (FUNCTION_KEYS.has(name)) return true;
  return hasCtrl && (hasShift ? WITH_CTRL_SHIFT : WITH_CTRL).has(name);
}
