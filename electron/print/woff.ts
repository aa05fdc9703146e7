import { inflateSync } from "node:zlib";
import { assert } from "../../core/base/outcome.ts";

const WOFF_HEADER = 44;
const WOFF_ENTRY = 20;
const SFNT_HEADER = 12;
const SFNT_ENTRY = 16;

/**
 * The plain font inside a WOFF file (W3C, WOFF File Format 1.0, sections 3 to 5). pdfkit reads WOFF too, but unpacks each
 * table again whenever it looks into it, which takes most of the time of a print.
 */
export function unpackedWoff(woff: Buffer): Buffer {
  assert(woff.toString("latin1", 0, 4) === "wOFF", "the shipped font is a WOFF file");
  const count = woff.readUInt16BE(12);
  const sfnt = Buffer.alloc(woff.readUInt32BE(16));
  writeHeader(sfnt, woff.readUInt32BE(4), count);
  let end = SFNT_HEADER + SFNT_ENTRY * count;
  for (let i = 0; i < count; i++) {
    const from = WOFF_HEADER + WOFF_ENTRY * i;
    const to = SFNT_HEADER + SFNT_ENTRY * i;
    const table = tableAt(woff, from);
    woff.copy(sfnt, to, from, from + 4);
    sfnt.writeUInt32BE(woff.readUInt32BE(from + 16), to + 4);
    sfnt.writeUInt32BE(end, to + 8);
    sfnt.writeUInt32BE(table.length, to + 12);
    table.copy(sfnt, end);
    end += Math.ceil(table.length / 4) * 4;
  }
  assert(end === sfnt.length, "the tables of the shipped font fill it");
  return sfnt;
}

/** The table that a directory entry names: packed only where packing made it shorter. */
function tableAt(woff: Buffer, entry: number): Buffer {
  const offset = woff.readUInt32BE(entry + 4);
  const packedLength = woff.readUInt32BE(entry + 8);
  const length = woff.readUInt32BE(entry + 12);
  const packed = woff.subarray(offset, offset + packedLength);
  const table = packedLength < length ? inflateSync(packed) : packed;
  assert(table.length === length, "a table of the shipped font has its stated length");
  return table;
}

/** Kind of font, number of tables, and the figures for a binary search that the format asks for. */
function writeHeader(sfnt: Buffer, flavour: number, count: number): void {
  const steps = Math.floor(Math.log2(count));
  sfnt.writeUInt32BE(flavour, 0);
  sfnt.writeUInt16BE(count, 4);
  sfnt.writeUInt16BE(2 ** steps * SFNT_ENTRY, 6);
  sfnt.writeUInt16BE(steps, 8);
  sfnt.writeUInt16BE((count - 2 ** steps) * SFNT_ENTRY, 10);
}
