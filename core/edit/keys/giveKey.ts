import { type Outcome, ok, type Refusal, refuse } from "../../base/outcome.ts";
import { mayBeKey } from "./mayBeKey.ts";
import { holderOf, keysOf, type OwnKeys, withKey } from "./ownKeys.ts";
import { CHANGEABLE, type ChangeableId, isChangeable, rowOf } from "./rows.ts";

/** What comes of giving a row a key. */
export interface Giving {
  readonly own: OwnKeys;
  /** The row that had the key and gets the old one in exchange, with both keys; null where nobody had it. */
  readonly swap: { readonly other: string; readonly key: string; readonly old: string } | null;
}

/** Own keys once a row has this key. Refuses what cannot be a key there, and what a row has that keeps it. */
export function giveKey(own: OwnKeys, id: ChangeableId, key: string): Outcome<Giving> {
  const may = mayBeKey(key, rowOf(id).place);
  return may.ok ? given(own, id, key, withKey(own, id, key)) : may;
}

/** Own keys once a row has what it was given at first; whoever has a key of it now gets the old one in exchange. */
export function giveBack(own: OwnKeys, id: ChangeableId): Outcome<Giving> {
  const { [id]: _, ...others } = own;
  const taken = rowOf(id).keys.find((key) => holderOf(key, id, own) !== null);
  return taken === undefined ? ok({ own: others, swap: null }) : given(own, id, taken, others);
}

/** Why keys from elsewhere cannot be a person's own; null where they can. */
export function ownKeysProblem(own: OwnKeys): Refusal | null {
  for (const id of CHANGEABLE) {
    const key = own[id];
    if (key === undefined) continue;
    const may = mayBeKey(key, rowOf(id).place);
    if (!may.ok) return may.refusal;
    const holder = holderOf(key, id, own);
    if (holder) return { code: "key-twice", about: { key, other: holder.words } };
  }
  return null;
}

function given(own: OwnKeys, id: ChangeableId, key: string, after: OwnKeys): Outcome<Giving> {
  const holder = holderOf(key, id, own);
  if (!holder) return ok({ own: after, swap: null });
  const other = holder.words;
  if (!isChangeable(holder)) return refuse("key-stays", { key, other });
  const [old] = keysOf(id, own);
  const swapped = old === undefined ? after : withKey(after, holder.id as ChangeableId, old);
  if (old === undefined || ownKeysProblem(swapped)) return refuse("key-no-swap", { key, other, old: old ?? "" });
  return ok({ own: swapped, swap: { other, key, old } });
}
