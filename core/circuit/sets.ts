/**
 * Sets of names that are merged two by two (Tarjan, "Efficiency of a Good But Not Linear Set Union Algorithm", 1975,
 * with path halving). A name stands for itself until it is merged.
 */
export class Sets {
  private readonly parent = new Map<string, string>();

  /** The name that stands for the whole set of this one. */
  of(name: string): string {
    let at = name;
    for (;;) {
      const up = this.parent.get(at) ?? at;
      if (up === at) return at;
      const above = this.parent.get(up) ?? up;
      this.parent.set(at, above);
      at = above;
    }
  }

  /** Merges the sets of two names. */
  merge(one: string, other: string): void {
    const a = this.of(one);
    const b = this.of(other);
    if (a !== b) this.parent.set(b, a);
  }
}
