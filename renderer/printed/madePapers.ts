/** Printed pages that were made ready and are kept though another page is in sight: each takes up to 48 MB. */
const MOST_KEPT = 4;
/** A picture that was replaced may still be painted in the frame that is under way, milliseconds. */
const CLOSE_MS = 500;

interface Made {
  readonly key: string;
  readonly levels: readonly ImageBitmap[];
}

/** What was made of printed pages, by their ids, and what was asked for last. Lets go of pictures that nobody will paint. */
export class MadePapers {
  private readonly made = new Map<string, Made>();
  private readonly asked = new Map<string, string>();

  /** True where this was not asked for yet; it counts as asked for then. */
  asks(id: string, key: string): boolean {
    if (this.asked.get(id) === key) return false;
    this.asked.set(id, key);
    return true;
  }

  /** Keeps what was made; false where something else was asked for meanwhile. */
  put(id: string, key: string, levels: readonly ImageBitmap[]): boolean {
    const isLast = this.asked.get(id) === key;
    if (isLast) {
      const before = this.made.get(id);
      this.made.delete(id);
      this.made.set(id, { key, levels });
      letGo(before?.levels ?? []);
    } else letGo(levels);
    return isLast;
  }

  /** The pictures of a printed page, the largest first; undefined while there are none. */
  of(id: string): readonly ImageBitmap[] | undefined {
    return this.made.get(id)?.levels;
  }

  /** Keeps these, and of others only the ones made last. */
  keepOf(ids: readonly string[]): void {
    const others = [...this.made.keys()].filter((id) => !ids.includes(id));
    for (const id of others.slice(0, Math.max(0, this.made.size - MOST_KEPT))) {
      letGo(this.made.get(id)!.levels);
      this.made.delete(id);
      this.asked.delete(id);
    }
  }
}

function letGo(levels: readonly ImageBitmap[]): void {
  const close = (): void => {
    for (const level of levels) level.close();
  };
  if (levels.length > 0) setTimeout(close, CLOSE_MS);
}
