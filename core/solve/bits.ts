/** Room for a bit for each of n columns, 32 a number, all 0. */
export function bitsFor(n: number): Int32Array {
  return new Int32Array((n + 31) >> 5);
}

/** Sets the bits of all n columns. */
export function markAll(bits: Int32Array, n: number): void {
  bits.fill(-1);
  if ((n & 31) !== 0) bits[n >> 5] = (1 << (n & 31)) - 1;
}

/** Sets the bits of a column and all above it in the elimination tree, up to one that has it, as then have all above that. */
export function markPath(bits: Int32Array, parentOf: Int32Array, from: number): void {
  for (let column = from; column >= 0; column = parentOf[column]!) {
    const word = column >> 5;
    const bit = 1 << (column & 31);
    if ((bits[word]! & bit) !== 0) return;
    bits[word] = bits[word]! | bit;
  }
}

/** The first column with a bit in a word that has some. */
export function lowestIn(word: number, bits: number): number {
  return (word << 5) + 31 - Math.clz32(bits & -bits);
}
