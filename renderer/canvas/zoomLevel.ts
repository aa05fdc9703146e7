/**
 * Zooms at which the words of a drawing are set anew. Between two of them words keep the size of the smaller zoom, and so
 * come out a little larger than need be; from the first one on they grow with the drawing.
 */
const LEVELS = [1, 0.9, 0.8, 0.7, 0.62, 0.55, 0.48, 0.42, 0.36, 0.3, 0.25, 0.2, 0.15, 0.1] as const;

/** The level at or below a zoom. */
export function levelOf(zoom: number): number {
  return LEVELS.find((level) => level <= zoom + 1e-6) ?? LEVELS.at(-1)!;
}
