/** Numbers from 0 to below `size` in sets that can be merged. */
export class Sets {
  private readonly above: Int32Array;

  constructor(size: number) {
    this.above = Int32Array.from({ length: size }, (_, number) => number);
  }

  /** The number that stands for the set of this one: the lowest in it. */
  of(number: number): number {
    let at = number;
    while (this.above[at] !== at) at = this.above[at]!;
    return at;
  }

  /** Makes one set of two. */
  merge(one: number, other: number): void {
    const [a, b] = [this.of(one), this.of(other)];
    this.above[Math.max(a, b)] = Math.min(a, b);
  }
}
