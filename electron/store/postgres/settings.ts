import type { Json } from "../../../schemas/json.ts";
import type { Settings } from "../../../schemas/settings.ts";
import { NOTE, settingsFrom, valueIn } from "../settingsFrom.ts";
import type { Session } from "./session.ts";
import { sql } from "./sql.ts";

/** All settings of this person; one that was never set, or that does not fit any more, is as at a first start. */
export async function settingsOf(session: Session): Promise<Settings> {
  const rows = await session.all<{ readonly name: string; readonly value: string }>(
    sql`SELECT name, value FROM settings WHERE person = ${session.person}`,
  );
  const stored = new Map(rows.map(({ name, value }) => [name, value]));
  return settingsFrom((name) => valueIn(stored.get(name)));
}

/** Changes some settings of this person; others are told of them by the name that they set. */
export async function keepSettings(
  session: Session,
  changes: { readonly [N in keyof Settings]?: Settings[N] | undefined },
): Promise<void> {
  for (const [name, value] of Object.entries(changes)) if (value !== undefined) await keepValue(session, name, value);
  if (changes.person !== undefined)
    await session.run(sql`
    UPDATE persons SET name = ${changes.person || session.name} WHERE id = ${session.person}`);
}

/** Something the host noted for itself; null where it did not. */
export async function noteOf(session: Session, name: string): Promise<Json> {
  const row = await session.first<{ readonly value: string }>(
    sql`SELECT value FROM settings WHERE person = ${session.person} AND name = ${NOTE + name}`,
  );
  return valueIn(row?.value) ?? null;
}

/** Notes something for the host itself. */
export function keepNote(session: Session, name: string, value: Json): Promise<void> {
  return keepValue(session, NOTE + name, value);
}

async function keepValue(session: Session, name: string, value: Json): Promise<void> {
  await session.run(sql`
    INSERT INTO settings (person, name, value) VALUES (${session.person}, ${name}, ${JSON.stringify(value)})
    ON CONFLICT (person, name) DO UPDATE SET value = excluded.value`);
}
