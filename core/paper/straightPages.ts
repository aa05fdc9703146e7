import type { Millimetres } from "../base/units.ts";
import { STRAIGHT_WORDS as WORDS } from "../base/words/straight.ts";
import type { Band, Section } from "./straightBand.ts";
import { LEAST, MOST_PARTS, MOST_STRETCH, ROWS } from "./straightSize.ts";

/** A band in its place on a sheet. */
export interface LaidBand {
  readonly band: Band;
  readonly top: Millimetres;
  readonly bottom: Millimetres;
}

/** What stands on one sheet. */
export type LaidSheet = readonly LaidBand[];

/** Letters of joints, without I and O. */
const LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ";

/**
 * Sections cut into sheets. A line is cut after a wire, and only there, at a joint with a letter; a heading stays with
 * what follows it. What a sheet has left over stretches its bands a little.
 */
export function layOut(sections: readonly Section[]): readonly LaidSheet[] {
  const sheets: Band[][] = [[]];
  let letter = 0;
  const turn = (): void => {
    if (sheets.at(-1)!.length > 0) sheets.push([]);
  };
  sections.forEach(({ heading, bands }, index) => {
    const whole = [...(heading ? [heading] : []), ...bands];
    if (!fits([...sheets.at(-1)!, ...whole]) && (fits(whole) || index > 0)) turn();
    let left = whole;
    while (!fits([...sheets.at(-1)!, ...left])) {
      const count = cutAfter(sheets.at(-1)!, left);
      const name = LETTERS[letter++ % LETTERS.length]!;
      const sheet = sheets.length;
      sheets.at(-1)!.push(...left.slice(0, count), jointBand(name, WORDS.onSheet(sheet + 1)));
      sheets.push([jointBand(name, WORDS.fromSheet(sheet))]);
      left = left.slice(count);
    }
    sheets.at(-1)!.push(...left);
  });
  return sheets.map(spread);
}

function jointBand(letter: string, where: string): Band {
  return { is: "end", letter, isStart: false, words: `${WORDS.joint(letter)}, ${where}`, least: LEAST.end };
}

/** How many bands still go on a sheet: the last of them a wire, where any is; never none, so that cutting comes to an end. */
function cutAfter(before: readonly Band[], bands: readonly Band[]): number {
  let last = 0;
  for (let count = 1; count < bands.length; count++) {
    if (!fits([...before, ...bands.slice(0, count), jointBand("A", "")])) break;
    const band = bands[count - 1]!;
    if (band.is === "row" && band.row.is === "wire") last = count;
  }
  return Math.max(1, last);
}

function fits(bands: readonly Band[]): boolean {
  return heightOf(bands) <= ROWS.bottom - ROWS.top + 1e-6 && partsIn(bands) <= MOST_PARTS;
}

function heightOf(bands: readonly Band[]): Millimetres {
  return bands.reduce((sum, { least }) => sum + least, 0);
}

function partsIn(bands: readonly Band[]): number {
  return bands.filter((band) => band.is === "row" && band.row.is === "part").length;
}

function spread(bands: readonly Band[]): LaidSheet {
  const stretch = Math.min(MOST_STRETCH, (ROWS.bottom - ROWS.top) / Math.max(1, heightOf(bands)));
  let top: Millimetres = ROWS.top;
  return bands.map((band): LaidBand => {
    const bottom = top + band.least * stretch;
    const laid = { band, top, bottom };
    top = bottom;
    return laid;
  });
}
