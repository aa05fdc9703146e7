/** First days of Electron's majors, as the package registry tells them; a new major is written down when it is taken. */
export const ELECTRON_RELEASED: Readonly<Record<number, string>> = {
  44: "2026-08-25",
  45: "2026-10-21",
};

/** Weeks between two majors, and how many majors are supported at once (Electron's documentation, "Electron Releases"). */
const WEEKS = 8;
const SUPPORTED = 3;
const WEEK_MS = 7 * 86_400_000;

/** The day from which a major gets no mending any more: when the third one after it is out, as far as can be told without asking. */
export function supportEnds(major: number): Date {
  const released = ELECTRON_RELEASED[major];
  return new Date(released === undefined ? 0 : new Date(released).getTime() + SUPPORTED * WEEKS * WEEK_MS);
}
