const KEPT = "class";

/** The name by which this window drives its class window; the same after the page was loaded again. */
export function ownClassId(kept: Pick<Storage, "getItem" | "setItem">, made: () => string): string {
  const known = kept.getItem(KEPT);
  if (known !== null) return known;
  const id = made();
  kept.setItem(KEPT, id);
  return id;
}

/** The channel between the two windows. */
export function channelName(id: string): string {
  return `class ${id}`;
}

/** The lock that the instructor's window holds as long as it lives. */
export function lockName(id: string): string {
  return `instructor ${id}`;
}
