import { readFileSync } from "node:fs";

/** Sizes in the log of a database, its write-ahead log (SQLite, Database File Format, section 4.1). */
const HEAD_BYTES = 32;
const FRAME_HEAD_BYTES = 24;
const MAGIC = 0x377f0682;

/** A page as the log has it. */
export interface Frame {
  readonly page: number;
  /** Pages of the database once this is the end of a commit; 0 where it is not. */
  readonly pagesAfter: number;
  readonly bytes: Buffer;
  /** Whether its checksum holds, if that of the frame before it is taken as it stands. */
  readonly isWhole: boolean;
}

/** What a log holds of the last time it was begun anew. */
export interface Log {
  readonly isHeadWhole: boolean;
  readonly frames: readonly Frame[];
}

/** Reads the log beside a database whose pages have this size; null where there is none. */
export function readLog(file: string, pageBytes: number): Log | null {
  const log = bytesOf(`${file}-wal`);
  if (log.length < HEAD_BYTES + FRAME_HEAD_BYTES + pageBytes) return null;
  const isBig = (log.readUInt32BE(0) & 1) === 1;
  const first = checksum(log.subarray(0, HEAD_BYTES - 8), [0, 0], isBig);
  const isHeadWhole =
    (log.readUInt32BE(0) & ~1) === MAGIC &&
    log.readUInt32BE(8) === pageBytes &&
    isSame(first, [log.readUInt32BE(24), log.readUInt32BE(28)]);
  // The first frame is always of the newest time.
  const salt = isHeadWhole ? log.subarray(16, 24) : log.subarray(HEAD_BYTES + 8, HEAD_BYTES + 16);
  const frames: Frame[] = [];
  let before: Sum = isHeadWhole ? first : [0, 0];
  for (let at = HEAD_BYTES; at + FRAME_HEAD_BYTES + pageBytes <= log.length; at += FRAME_HEAD_BYTES + pageBytes) {
    const head = log.subarray(at, at + FRAME_HEAD_BYTES);
    const bytes = log.subarray(at + FRAME_HEAD_BYTES, at + FRAME_HEAD_BYTES + pageBytes);
    const said: Sum = [head.readUInt32BE(16), head.readUInt32BE(20)];
    const isOurs = head.subarray(8, 16).equals(salt);
    const isWhole = isOurs && isSame(checksum(bytes, checksum(head.subarray(0, 8), before, isBig), isBig), said);
    if (isOurs || isWhole)
      frames.push({ page: head.readUInt32BE(0), pagesAfter: head.readUInt32BE(4), bytes, isWhole });
    else if (!hasOurs(log, at + FRAME_HEAD_BYTES + pageBytes, salt, pageBytes)) break;
    before = said;
  }
  return { isHeadWhole, frames };
}

/** Commits that SQLite passes over because something before them is damaged; 0 where it reads all there is. */
export function commitsLost({ isHeadWhole, frames }: Log): number {
  const bad = isHeadWhole ? frames.findIndex(({ isWhole }) => !isWhole) : 0;
  if (bad < 0) return 0;
  return frames.slice(bad).filter(({ pagesAfter }) => pagesAfter > 0).length;
}

type Sum = readonly [number, number];

/** The checksum of the log, over whole pairs of words. */
function checksum(bytes: Buffer, [a, b]: Sum, isBig: boolean): Sum {
  let [one, two] = [a, b];
  const word = (at: number): number => (isBig ? bytes.readUInt32BE(at) : bytes.readUInt32LE(at));
  for (let at = 0; at < bytes.length; at += 8) {
    one = (one + word(at) + two) >>> 0;
    two = (two + word(at + 4) + one) >>> 0;
  }
  return [one, two];
}

function isSame([a, b]: Sum, [c, d]: Sum): boolean {
  return a === c && b === d;
}

/** Whether the frame at a place is of this time: then the one before it is a damaged one, and no older one. */
function hasOurs(log: Buffer, at: number, salt: Buffer, pageBytes: number): boolean {
  if (at + FRAME_HEAD_BYTES + pageBytes > log.length) return false;
  return log.subarray(at + 8, at + 16).equals(salt);
}

function bytesOf(file: string): Buffer {
  try {
    return readFileSync(file);
  } catch {
    return Buffer.alloc(0);
  }
}
