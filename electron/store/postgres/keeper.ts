import { type Outcome, ok, type Refusal } from "../../../core/base/outcome.ts";
import { BIN_DAYS } from "../../../schemas/limits.ts";
import { storeRefusal } from "../failure.ts";
import { keptOpen } from "../keptOpen.ts";
import type { Library, LibraryKeeper } from "../library.ts";
import { nameOf, type ServerAddress } from "./address.ts";
import { serverRefusal } from "./failure.ts";
import { postgresLibrary } from "./library.ts";
import { personIn } from "./person.ts";
import { sweepPictures } from "./pictures.ts";
import { lineTo, type Server } from "./server.ts";
import type { Session } from "./session.ts";
import { settingsOf } from "./settings.ts";
import { sql } from "./sql.ts";
import { upgraded } from "./upgrade.ts";

interface Opened {
  readonly library: Library;
  readonly server: Server;
}

/**
 * A keeper of the library on a server; `folder` has this machine's own part of it, `person` is what others are told of whom they
 * share it with. On opening, the first of each day empties the bin of old things and lets go of pictures that none names.
 */
export function keepPostgres(address: ServerAddress, folder: string, now: () => Date, person: string): LibraryKeeper {
  const open = async (): Promise<Outcome<Opened>> => {
    let server: Server | null = null;
    let opened: Outcome<Opened> | null = null;
    try {
      const id = await personIn(folder);
      server = await lineTo(address);
      const ready = await upgraded(server, now());
      if (!ready.ok) return ready;
      const whole = server.wholeOf(id, person);
      const begun = await whole("write", (at) => begin(at, now()));
      opened = begun.ok ? ok({ library: postgresLibrary(whole), server }) : begun;
      return opened;
    } catch (error) {
      const refusal = serverRefusal(error, address) ?? storeRefusal(error, folder);
      if (!refusal) throw error;
      return { ok: false, refusal };
    } finally {
      if (!opened?.ok) await server?.close();
    }
  };
  const kept = keptOpen(open);
  return {
    folder,
    place: { where: "server", name: nameOf(address) },
    library: async () => {
      const opened = await kept.get();
      return opened.ok ? ok(opened.value.library) : opened;
    },
    takeNotices: (): readonly Refusal[] => [],
    close: async () => {
      const opened = await kept.end();
      await opened?.server.close();
    },
  };
}

/** Makes the person known, and does the chores of the day unless somebody did. */
async function begin(session: Session, now: Date): Promise<Outcome<null>> {
  const { person: own } = await settingsOf(session);
  await session.run(sql`
    INSERT INTO persons (id, name, seen) VALUES (${session.person}, ${own || session.name}, ${now})
    ON CONFLICT (id) DO UPDATE SET name = excluded.name, seen = excluded.seen`);
  // A machine whose clock is ahead must not throw away what others still count on.
  const clock = await session.first<{ readonly moment: string }>(
    sql`SELECT least(${now}::timestamptz, now()) AS moment`,
  );
  const today = clock!.moment.slice(0, 10);
  // Whoever comes second finds it done, or waits until it is.
  const isFirst = (await session.run(sql`UPDATE chores SET done = ${today}::date WHERE done < ${today}::date`)) > 0;
  if (isFirst) await emptyBin(session, new Date(clock!.moment));
  return ok(null);
}

/** Lets go for good of what has been in the bin for more than 30 days, and of pictures that none names. */
async function emptyBin(session: Session, now: Date): Promise<void> {
  const isOld = sql`removed < ${now}::timestamptz - make_interval(days => ${BIN_DAYS}::integer)`;
  await session.run(sql`DELETE FROM circuits WHERE ${isOld}`);
  await session.run(sql`DELETE FROM jobs WHERE ${isOld}`);
  await session.run(sql`UPDATE attempts SET gone = true WHERE ${isOld}`);
  // An exercise that nobody has any more is nobody's.
  await session.run(sql`
    DELETE FROM exercises e WHERE NOT EXISTS (SELECT 1 FROM attempts a WHERE a.exercise = e.id AND NOT a.gone)`);
  await sweepPictures(session, now);
}
