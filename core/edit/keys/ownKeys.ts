import { type KeyPress, spelled } from "./press.ts";
import { type ChangeableId, KEY_ROWS, type KeyId, type KeyIdOf, type KeyPlace, type KeyRow, rowOf } from "./rows.ts";

/** The keys that a person gave, by row and as `spelled` writes them. Each stands in place of all that the row was given. */
export type OwnKeys = { readonly [Id in ChangeableId]?: string };

/** Nobody has changed a key. */
export const NO_OWN_KEYS: OwnKeys = {};

/**
 * The keys that a row has now. What a person gave to one row is no other row's any more, even where a newer program would
 * give it there: then that row has none.
 */
export function keysOf(id: KeyId, own: OwnKeys): readonly string[] {
  const row = rowOf(id);
  if (row.as !== undefined) return keysOf(row.as as KeyId, own);
  const key = own[id as ChangeableId];
  if (key !== undefined) return [key];
  return row.stays ? row.keys : row.keys.filter((each) => !isGivenAway(each, row, own));
}

/** What a press means in a place; null where it means nothing there. */
export function bound<P extends KeyPlace>(place: P, press: KeyPress, own: OwnKeys): KeyIdOf<P> | null {
  const spelling = spelled(press);
  const row = KEY_ROWS.find((each) => each.place === place && keysOf(each.id, own).includes(spelling));
  return (row?.id ?? null) as KeyIdOf<P> | null;
}

/** The other row that has this key where the first would meet it; null where it is free. */
export function holderOf(key: string, id: KeyId, own: OwnKeys): KeyRow | null {
  const { place } = rowOf(id);
  const rows: readonly KeyRow[] = KEY_ROWS;
  const isHolder = (row: KeyRow): boolean =>
    row.id !== id && row.as === undefined && meet(row.place, place) && keysOf(row.id as KeyId, own).includes(key);
  return rows.find(isHolder) ?? null;
}

function isGivenAway(key: string, row: KeyRow, own: OwnKeys): boolean {
  return Object.entries(own).some(
    ([id, given]) => given === key && id !== row.id && meet(rowOf(id as ChangeableId).place, row.place),
  );
}

/** Whether one press can be heard in both places: the window hears all, and a tool in hand passes on what it has no use for. */
function meet(one: KeyPlace, other: KeyPlace): boolean {
  const both = [one, other];
  return one === other || both.includes("window") || (both.includes("drawing") && both.includes("pen"));
}

/** Own keys with one more; a key that the row was given anyway brings back all that it was given. */
export function withKey(own: OwnKeys, id: ChangeableId, key: string): OwnKeys {
  const { [id]: _, ...others } = own;
  return rowOf(id).keys.includes(key) ? others : { ...others, [id]: key };
}
