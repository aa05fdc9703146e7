import { createHash } from "node:crypto";
import { existsSync, readFileSync, statSync } from "node:fs";
import { hostname, userInfo } from "node:os";
import { join } from "node:path";
import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import type { LibraryKeeper } from "./library.ts";
import { keyOf, readAddress, type ServerAddress } from "./postgres/address.ts";
import { keepPostgres } from "./postgres/keeper.ts";
import { keepStore } from "./sqlite/keeper.ts";

/** Name of the file in the data folder in which a connection string can stand; only its owner may read it. */
export const ADDRESS_FILE = "library.txt";

/** What says which library a start works on. */
export interface LibraryWish {
  /** What was given with the command; null where nothing was. */
  readonly given: string | null;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Folder of this person's data, and of their own library. */
  readonly data: string;
  readonly platform: string;
}

/** The library that a start works on. */
export interface LibraryChoice {
  /** Folder of this machine's part of it: one process has it at a time. */
  readonly folder: string;
  /** Its address for a process that is started for it, which must not stand in a command; null for one's own. */
  readonly address: string | null;
  keeper(now: () => Date): LibraryKeeper;
}

/**
 * The library to work on: by the command, by `WIREFATHOM_LIBRARY`, by a file in the data folder, else one's own. Refuses a
 * connection string that is wrong or that others could read, each with its own `library-address...`.
 */
export function chosenLibrary(wish: LibraryWish): Outcome<LibraryChoice> {
  const { given, env, data } = wish;
  const person = personHere(env);
  const text = addressIn(wish);
  if (!text.ok) return text;
  if (text.value === null) return ok({ folder: data, address: null, keeper: (now) => keepStore(data, now, person) });
  const address = readAddress(text.value, env);
  if (!address.ok) return address;
  if (given !== null && address.value.password !== null) return refuse("library-address-password");
  const folder = join(data, "shared", shortHash(address.value));
  return ok({ folder, address: text.value, keeper: (now) => keepPostgres(address.value, folder, now, person) });
}

/** What others who share a library are told of whom they share it with: `WIREFATHOM_PERSON`, or "ann on bench-2". */
export function personHere(env: LibraryWish["env"]): string {
  const given = env.WIREFATHOM_PERSON?.trim();
  if (given) return given.slice(0, 60);
  return `${userName()} on ${hostname()}`.slice(0, 60);
}

/** A machine may know no name for who runs this. */
function userName(): string {
  try {
    return userInfo().username;
  } catch {
    return "somebody";
  }
}

function addressIn({ given, env, data, platform }: LibraryWish): Outcome<string | null> {
  if (given !== null) return ok(given);
  if (env.WIREFATHOM_LIBRARY) return ok(env.WIREFATHOM_LIBRARY);
  const file = join(data, ADDRESS_FILE);
  if (!existsSync(file)) return ok(null);
  // Windows keeps what is in a person's own folder from others by itself.
  if (platform !== "win32" && (statSync(file).mode & 0o077) !== 0) return refuse("library-address-open-file", { file });
  return ok(readFileSync(file, "utf8").trim());
}

function shortHash(address: ServerAddress): string {
  return createHash("sha256").update(keyOf(address)).digest("hex").slice(0, 16);
}
