/** What can be handed on as a file. */
export const EXPORTS = ["take-home", "svg", "png-2", "png-4", "moving", "table", "wires", "nets"] as const;
export type Export = (typeof EXPORTS)[number];

/** Inks of a picture. */
export type PictureInk = "light" | "dark" | "black";

/** Which file is asked for, and in which ink where it is a picture. */
export interface ExportAsk {
  readonly what: Export;
  readonly palette: PictureInk;
}
