import type { Json } from "../../../schemas/json.ts";
import { type Settings, settingsShape } from "../../../schemas/settings.ts";
import { NOTE, settingsFrom, valueIn } from "../settingsFrom.ts";
import type { Store } from "./store.ts";

/** All settings; one that was never set, or that does not fit any more, is as at a first start. */
export function settingsOf(store: Store): Settings {
  return settingsFrom((name) => storedValue(store, name));
}

/** Name of the person who works with the library: as they set it, else as the machine knows them; empty where neither does. */
export function personOf(store: Store): string {
  const own = settingsShape.shape.person.safeParse(storedValue(store, "person"));
  return (own.success && own.data) || (store.person ?? "");
}

/** Changes some settings, in one transaction. */
export function keepSettings(
  store: Store,
  changes: { readonly [N in keyof Settings]?: Settings[N] | undefined },
): void {
  store.connection.transaction(() => {
    for (const [name, value] of Object.entries(changes)) if (value !== undefined) keepValue(store, name, value);
  })();
}

/** Something the host noted for itself, such as the window's place; null where it did not. */
export function noteOf(store: Store, name: string): Json {
  return storedValue(store, NOTE + name) ?? null;
}

/** Notes something for the host itself. */
export function keepNote(store: Store, name: string, value: Json): void {
  keepValue(store, NOTE + name, value);
}

function storedValue({ connection }: Store, name: string): Json | undefined {
  const text = connection.prepare("SELECT value FROM settings WHERE name = ?").pluck().get(name) as string | undefined;
  return valueIn(text);
}

function keepValue({ connection }: Store, name: string, value: Json): void {
  connection.prepare("INSERT OR REPLACE INTO settings (name, value) VALUES (?, ?)").run(name, JSON.stringify(value));
}
