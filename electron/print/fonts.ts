import { existsSync, readFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { assert } from "../../core/base/outcome.ts";
import type { Weight } from "../../core/drawing/mark.ts";
import { type FontAddresses, SHEET_FAMILY } from "../../core/drawing/svg.ts";
import { unpackedWoff } from "./woff.ts";

const FILES: Readonly<Record<Weight, string>> = { 400: "Regular", 600: "SemiBold", 700: "Bold" };
const WEIGHTS: readonly Weight[] = [400, 600, 700];
const FORMATS = ["woff", "woff2"] as const;
const find = createRequire(import.meta.url);

/** How type is set: even figures, slashed zero, and no kerning, so that measured widths hold (TYPE_STYLE says it in SVG). */
export const TYPE_FEATURES = { tnum: true, zero: true, kern: false, liga: false } as const;

/** Folder of the fonts beside the built program; the sources take them from their package. */
export const OWN_FONTS = "fonts";
const own = join(dirname(fileURLToPath(import.meta.url)), OWN_FONTS);

/** Path of the whole shipped font of this weight; the subsets lack signs that the sheets use. */
function fontPath(weight: Weight, format: (typeof FORMATS)[number] = "woff"): string {
  const file = `IBMPlexSansCondensed-${FILES[weight]}.${format}`;
  const built = join(own, file);
  return existsSync(built) ? built : find.resolve(`@ibm/plex-sans-condensed/fonts/complete/${format}/${file}`);
}

/** Paths of all that `fontBytes` and `embeddedFonts` read. */
export function fontPaths(): readonly string[] {
  return WEIGHTS.flatMap((weight) => FORMATS.map((format) => fontPath(weight, format)));
}

const opened = new Map<Weight, Buffer>();

/** The shipped font of this weight as plain bytes, unpacked once in the life of the program. */
export function fontBytes(weight: Weight): Buffer {
  const known = opened.get(weight) ?? unpackedWoff(readFileSync(fontPath(weight)));
  opened.set(weight, known);
  return known;
}

/** The three fonts as data addresses, for a file that must stand by itself. */
export async function embeddedFonts(): Promise<FontAddresses> {
  const address = async (weight: Weight): Promise<string> => {
    const bytes = await readFile(fontPath(weight, "woff2"));
    return `data:font/woff2;base64,${bytes.toString("base64")}`;
  };
  return { 400: await address(400), 600: await address(600), 700: await address(700) };
}

/** Parts of the regular font in which western words and the signs of a drawing are set; other scripts fall to the reader's own font. */
const SMALL_PARTS = ["Latin1", "Pi"];

/**
 * Rules that load the regular font for western words alone, as data addresses, each part for the signs that its own sheet names:
 * half of the whole one, for a page that has little room.
 */
export async function smallFaces(): Promise<string> {
  const folder = "@ibm/plex-sans-condensed/fonts/split/woff2/";
  const sheet = await readFile(find.resolve(`${folder}IBMPlexSansCondensed-Regular.css`), "utf8");
  const rules = SMALL_PARTS.map(async (part) => {
    const file = `IBMPlexSansCondensed-Regular-${part}.woff2`;
    const [, signs] = new RegExp(`${file}[^}]*unicode-range: ([^}]*)`).exec(sheet) ?? [];
    assert(signs, `the sheet of the font names the signs of ${part}`);
    const bytes = await readFile(find.resolve(folder + file));
    return `@font-face { font-family: "${SHEET_FAMILY}"; font-weight: 400; src: url("data:font/woff2;base64,${bytes.toString("base64")}"); unicode-range: ${signs.trim()}; }`;
  });
  return (await Promise.all(rules)).join("\n");
}
