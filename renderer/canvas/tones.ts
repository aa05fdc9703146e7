/** Colours of what lies under and over the drawing, as `style/tokens.css` names them. The drawing's own are in core. */
export interface Tones {
  readonly raised: string;
  readonly hover: string;
  readonly rule: string;
  readonly edge: string;
  readonly ink: string;
  readonly quiet: string;
  readonly desk: string;
  /** Round the paper: close enough to the sheet that what is measured on it holds here too. */
  readonly round: string;
  readonly accent: string;
  readonly onAccent: string;
  readonly halo: string;
}

/** Colours of what is painted over and under the drawing, as the style sheet has them. */
export const TONES: Readonly<Record<"light" | "dark", Tones>> = {
  light: {
    raised: "#ffffff",
    hover: "#dfe4e1",
    rule: "#d6dcd9",
    edge: "#7a8681",
    ink: "#16201d",
    quiet: "#44504b",
    desk: "#e7eae8",
    round: "#f4f6f5",
    accent: "#12645a",
    onAccent: "#ffffff",
    halo: "#12645a33",
  },
  dark: {
    raised: "#222930",
    hover: "#2d353c",
    rule: "#2e353b",
    edge: "#717c82",
    ink: "#e8edeb",
    quiet: "#bac4c0",
    desk: "#0b0e11",
    round: "#0f1317",
    accent: "#7fcbb8",
    onAccent: "#06211b",
    halo: "#7fcbb83d",
  },
};

/** The interface's own face, for the few words that lie over the drawing. */
export const INTERFACE_FONT =
  '"Segoe UI Variable Text", "Segoe UI", -apple-system, BlinkMacSystemFont, "Adwaita Sans", "Inter", "Noto Sans", "Liberation Sans", Arial, sans-serif';
