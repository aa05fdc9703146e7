/**
 * A 32-bit hash of a text, 0 to 4,294,967,295: FNV-1a over the UTF-16 units, then two rounds of mixing so that texts which
 * differ in one sign differ in all bits. For naming what was printed, never for keeping secrets.
 */
export function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}
