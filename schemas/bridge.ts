import type { CallName } from "./callNames.ts";

/** Name under which the window's preload puts the bridge into the page. */
export const BRIDGE = "wirefathom";
/** The one channel between page and window. */
export const CALL_CHANNEL = "call";

/** What the page of the window finds: its only way out. What comes back is an outcome, as plain data. */
export interface Bridge {
  call(name: CallName, argument: unknown): Promise<unknown>;
}
