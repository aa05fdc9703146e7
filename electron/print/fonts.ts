import { readFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { Weight } from "../../core/drawing/mark.ts";
import type { FontAddresses } from "../../core/drawing/svg.ts";
import { unpackedWoff } from "./woff.ts";

const FILES: Readonly<Record<Weight, string>> = { 400: "Regular", 600: "SemiBold", 700: "Bold" };
const find = createRequire(import.meta.url);

/** How type is set: even figures, slashed zero, and no kerning, so that measured widths hold (TYPE_STYLE says it in SVG). */
export const TYPE_FEATURES = { tnum: true, zero: true, kern: false, liga: false } as const;

/** Path of the whole shipped font of this weight; the subsets lack signs that the sheets use. */
export function fontPath(weight: Weight, format: "woff" | "woff2" = "woff"): string {
  return find.resolve(
    `@ibm/plex-sans-condensed/fonts/complete/${format}/IBMPlexSansCondensed-${FILES[weight]}.${format}`,
  );
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
