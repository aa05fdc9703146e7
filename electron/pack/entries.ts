import { Inflate } from "fflate";
import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";

/** One file in a packed one, as its directory tells it; nothing is unpacked yet. */
export interface Entry {
  readonly name: string;
  /** Bytes as they lie there, and as they will be. */
  readonly packedBytes: number;
  readonly bytes: number;
  readonly isDeflated: boolean;
  /** Where its own head begins. */
  readonly at: number;
}

const END = 0x06054b50;
const DIRECTORY = 0x02014b50;
const LOCAL = 0x04034b50;
/** The end record is 22 bytes and a comment of at most 65,535. */
const END_BYTES = 22;
const MOST_COMMENT = 65_535;
/** A stored file takes no more than it is; deflate adds 5 bytes to 65,535 at worst. */
const SLACK = 1_000;
const PIECE = 16_384;

/** Whether a file is a ZIP archive, by its first bytes; an archive with nothing in it counts. */
export function isArchive(bytes: Uint8Array): boolean {
  return (
    bytes[0] === 0x50 && bytes[1] === 0x4b && ((bytes[2] === 3 && bytes[3] === 4) || (bytes[2] === 5 && bytes[3] === 6))
  );
}

/**
 * The files in a ZIP archive (PKWARE's application note 6.3), at most so many, by its central directory. Refuses
 * `pack-damaged`, `pack-many`, `pack-encrypted`, `pack-method` and `pack-twice`.
 */
export function entriesOf(bytes: Uint8Array, most: number): Outcome<readonly Entry[]> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOf(view);
  if (end === null) return refuse("pack-damaged");
  const count = view.getUint16(end + 10, true);
  if (count > most) return refuse("pack-many", { most });
  const entries: Entry[] = [];
  const names = new Set<string>();
  let at = view.getUint32(end + 16, true);
  for (let index = 0; index < count; index++) {
    if (at + 46 > end || view.getUint32(at, true) !== DIRECTORY) return refuse("pack-damaged");
    const [nameBytes, extra, comment] = [28, 30, 32].map((offset) => view.getUint16(at + offset, true)) as [
      number,
      number,
      number,
    ];
    const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameBytes));
    const method = view.getUint16(at + 10, true);
    if ((view.getUint16(at + 8, true) & 1) !== 0) return refuse("pack-encrypted");
    if (method !== 0 && method !== 8) return refuse("pack-method", { name: shown(name) });
    if (names.has(name)) return refuse("pack-twice", { name: shown(name) });
    names.add(name);
    entries.push({
      name,
      packedBytes: view.getUint32(at + 20, true),
      bytes: view.getUint32(at + 24, true),
      isDeflated: method === 8,
      at: view.getUint32(at + 42, true),
    });
    at += 46 + nameBytes + extra + comment;
  }
  return ok(entries);
}

/** The end record, sought from the end of the file backwards. */
function endOf(view: DataView): number | null {
  const last = view.byteLength - END_BYTES;
  for (let at = last; at >= 0 && at >= last - MOST_COMMENT; at--) {
    if (view.getUint32(at, true) === END && view.getUint16(at + 20, true) === last - at) return at;
  }
  return null;
}

/**
 * The bytes of one file. They are unpacked piece by piece and given up as soon as they are more than the directory says, so
 * that a small archive cannot fill the memory. Refuses `pack-damaged` and `pack-size`.
 */
export function unpackedEntry(archive: Uint8Array, entry: Entry, mostBytes: number): Outcome<Uint8Array> {
  const { name, packedBytes, bytes, isDeflated, at } = entry;
  const tooLarge = refuse("pack-size", { name: shown(name), most: mostBytes / 1e6 });
  if (bytes > mostBytes || packedBytes > bytes + SLACK + bytes / 1_000) return tooLarge;
  const view = new DataView(archive.buffer, archive.byteOffset, archive.byteLength);
  if (at + 30 > archive.length || view.getUint32(at, true) !== LOCAL) return refuse("pack-damaged");
  const start = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  const packed = archive.subarray(start, start + packedBytes);
  if (packed.length !== packedBytes) return refuse("pack-damaged");
  if (!isDeflated) return packedBytes === bytes ? ok(packed) : refuse("pack-damaged");
  const whole = new Uint8Array(bytes);
  let filled = 0;
  let isOver = false;
  const inflate = new Inflate((piece) => {
    isOver ||= filled + piece.length > bytes;
    if (!isOver) whole.set(piece, filled);
    filled += piece.length;
  });
  try {
    for (let from = 0; from < packedBytes && !isOver; from += PIECE) {
      inflate.push(packed.subarray(from, from + PIECE), from + PIECE >= packedBytes);
    }
  } catch {
    return refuse("pack-damaged");
  }
  if (isOver) return tooLarge;
  return filled === bytes ? ok(whole) : refuse("pack-damaged");
}

/** A name as it can be told: a hostile one may be long or hold anything. */
export function shown(name: string): string {
  return name.replace(/[^\p{L}\p{N} ._/\\-]/gu, "?").slice(0, 80);
}
