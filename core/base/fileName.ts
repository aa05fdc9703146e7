/** Names that Windows keeps for devices, whatever comes after a dot (Microsoft, "Naming Files, Paths, and Namespaces"). */
const DEVICES = /^(con|prn|aux|nul|conin\$|conout\$|(com|lpt)[\d\u00b9\u00b2\u00b3])(?=\s*(\.|$))/i;
const MOST_SIGNS = 80;
/** Most that a system takes is 255, with its ending and with what is put behind it while it is written. */
const MOST_BYTES = 180;

/**
 * A name for a file without its ending, of signs that every system takes: no longer than one takes it, whatever the signs, and no
 * device's. Cut between signs; nothing at all is "circuit".
 */
export function fileStem(cleaned: string): string {
  let name = "";
  let bytes = 0;
  for (const sign of [...cleaned].slice(0, MOST_SIGNS)) {
    bytes += bytesOf(sign.codePointAt(0)!);
    if (bytes > MOST_BYTES) break;
    name += sign;
  }
  const plain = name.replace(/^[ .]+|[ .]+$/g, "");
  return plain === "" ? "circuit" : plain.replace(DEVICES, "$1 circuit");
}

/** Bytes of a sign in UTF-8 (RFC 3629, section 3). */
function bytesOf(code: number): number {
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
}
