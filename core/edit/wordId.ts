/** Most characters of an id made from words, below the 40 that a circuit file takes. */
const MOST = 32;

/** An id for a thing with a label, such as `middle-vent-opens`, that no other of the list has. */
export function wordId(list: readonly { readonly id: string }[], label: string, otherwise: string): string {
  const words = label
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .slice(0, MOST)
    .replace(/^-+|-+$/g, "");
  const base = words === "" || words in Object.prototype ? otherwise : words;
  for (let count = 1; ; count++) {
    const id = count === 1 ? base : `${base}-${count}`;
    if (list.every((item) => item.id !== id)) return id;
  }
}
