/** Where more than this share of the lists is another, all are joined anew. */
const MOST_OTHERS = 1 / 16;

/** The lists that a row of things comes to, joined into one; a thing that is the same object as last time has the same list. */
export class ListsAgain<A extends object, T> {
  private things: readonly A[] = [];
  private lists: readonly (readonly T[])[] = [];
  private lengths = new Int32Array(0);
  private all: readonly T[] = [];

  /** `listOf` is asked for other things alone, or for all where what it rests on besides is `anew`. */
  join(things: readonly A[], listOf: (thing: A) => readonly T[], anew = false): readonly T[] {
    if (things === this.things && !anew) return this.all;
    const { things: before, lists: last } = this;
    const lists: (readonly T[])[] = new Array(things.length);
    const others: number[] = [];
    for (let i = 0; i < things.length; i++) {
      const list = !anew && things[i] === before[i] ? last[i]! : listOf(things[i]!);
      if (list !== last[i]) others.push(i);
      lists[i] = list;
    }
    const isFew = lists.length === last.length && others.length <= MOST_OTHERS * lists.length;
    this.all = isFew ? this.exchanged(lists, others) : lists.flat();
    if (!isFew) this.lengths = Int32Array.from(lists, ({ length }) => length);
    this.things = things;
    this.lists = lists;
    return this.all;
  }

  /** All as it was with other lists at a few places. */
  private exchanged(lists: readonly (readonly T[])[], others: readonly number[]): readonly T[] {
    if (others.length === 0) return this.all;
    const { lengths, all } = this;
    const pieces: (readonly T[])[] = [];
    let [at, from, next] = [0, 0, 0];
    for (const index of others) {
      while (next < index) at += lengths[next++]!;
      pieces.push(all.slice(from, at), lists[index]!);
      at += lengths[next++]!;
      from = at;
      lengths[index] = lists[index]!.length;
    }
    return ([] as T[]).concat(...pieces, all.slice(from));
  }
}
