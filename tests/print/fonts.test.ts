import { expect, test } from "vitest";
import type { Weight } from "../../core/drawing/mark.ts";
import { embeddedFonts, fontBytes } from "../../electron/print/fonts.ts";
import { unpackedWoff } from "../../electron/print/woff.ts";

const WEIGHTS: readonly Weight[] = [400, 600, 700];

/** Sum of the table's big-endian words, as the directory of an OpenType font states it (OpenType, "Calculating Checksums"). */
function checksum(table: Buffer): number {
  const padded = Buffer.concat([table, Buffer.alloc((4 - (table.length % 4)) % 4)]);
  let sum = 0;
  for (let i = 0; i < padded.length; i += 4) sum = (sum + padded.readUInt32BE(i)) >>> 0;
  return sum;
}

test.each(WEIGHTS)(
  "every table of the unpacked font of weight %i has the checksum that its directory states",
  (weight) => {
    const font = fontBytes(weight);
    const count = font.readUInt16BE(4);
    expect(count).toBeGreaterThan(9);
    for (let i = 0; i < count; i++) {
      const entry = 12 + 16 * i;
      const tag = font.toString("latin1", entry, entry + 4);
      const table = Buffer.from(font.subarray(font.readUInt32BE(entry + 8)).subarray(0, font.readUInt32BE(entry + 12)));
      // The head table holds a sum over the whole file, which counts as 0 here.
      if (tag === "head") table.writeUInt32BE(0, 8);
      expect(checksum(table), tag).toBe(font.readUInt32BE(entry + 4));
    }
  },
);

test("a file that is no WOFF is a broken installation, not a font", () => {
  expect(() => unpackedWoff(Buffer.from("OTTO and much more that is no font at all"))).toThrow("WOFF");
});

test("each weight is embedded as its own font", async () => {
  const addresses = Object.values(await embeddedFonts());
  expect(new Set(addresses).size).toBe(3);
  for (const address of addresses) expect(address.startsWith("data:font/woff2;base64,d09GMg")).toBe(true);
});
