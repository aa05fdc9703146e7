/** Bytes that are made text at once: more arguments would not fit on the stack. */
const PIECE = 0x8000;

/** Bytes as base64, as they go to the host. */
export function base64Of(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let at = 0; at < bytes.length; at += PIECE) pieces.push(String.fromCharCode(...bytes.subarray(at, at + PIECE)));
  return btoa(pieces.join(""));
}

/** The bytes of a base64 text that comes from the host. */
export function bytesOf(base64: string): Uint8Array<ArrayBuffer> {
  const signs = atob(base64);
  const bytes = new Uint8Array(signs.length);
  for (let at = 0; at < signs.length; at++) bytes[at] = signs.charCodeAt(at);
  return bytes;
}
