import type { Devtools } from "./devtools.ts";

/** Something that can be closed as a person closes it; false where it would not. */
export interface Closable {
  close(): boolean;
}

/** Says that this is no Electron, and what shows its pages: `156.0.8078.79`. */
export const standin = { chromium: "" };

/** What the parts of the double share. */
export const stage = {
  /** Folder of the program that is run. */
  root: "",
  isReady: false,
  /** Chromium, once it is there. */
  devtools: Promise.withResolvers<Devtools>(),
  windows: new Set<Closable>(),
};
