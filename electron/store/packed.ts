import { createHash } from "node:crypto";
import { deflateSync, inflateSync } from "node:zlib";

/** A text as it lies in the library: smaller, and with a checksum, since SQLite itself keeps none. */
export function packed(text: string): Buffer {
  return deflateSync(text);
}

/** The text again, or null where a byte of it changed on the disk. */
export function unpacked(blob: Buffer): string | null {
  try {
    return inflateSync(blob).toString("utf8");
  } catch {
    return null;
  }
}

/** SHA-256 of a text, in hex. */
export function hashOfText(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}
