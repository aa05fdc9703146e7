import { onTestFinished } from "vitest";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import type { Library, LibraryKeeper, Save } from "../../../electron/store/library.ts";
import { readAddress } from "../../../electron/store/postgres/address.ts";
import { keepPostgres } from "../../../electron/store/postgres/keeper.ts";
import { keepStore } from "../../../electron/store/sqlite/keeper.ts";
import { MORNING, ownFolder, value } from "../../electron/library.ts";
import { sample } from "../../electron/sample.ts";
import type { TestServer } from "../../postgres/server.ts";

/** A library of a test's own, empty, as two who share it have it; where only one can, both are the same. */
export interface Shared {
  readonly ann: Library;
  readonly ben: Library;
  /** Ends it for both and opens it again at another moment, for Ann. */
  again(now: Date): Promise<Library>;
}

/** A way of keeping a library, and whether each who shares it has a bench of their own. */
export interface Kind {
  readonly name: string;
  readonly hasOwnBenches: boolean;
  open(): Promise<Shared>;
}

/** Every way of keeping a library; `server` is the one that those on a server are on. */
export function kinds(server: () => TestServer): readonly Kind[] {
  return [
    {
      name: "SQLite",
      hasOwnBenches: false,
      open: async () => {
        const folder = ownFolder();
        return shared((now) => [keepStore(folder, () => now, "ann")]);
      },
    },
    {
      name: "PostgreSQL",
      hasOwnBenches: true,
      open: async () => {
        const address = value(readAddress(server().newDatabase(), {}));
        const folders = { ann: ownFolder(), ben: ownFolder() };
        return shared((now) => [
          keepPostgres(address, folders.ann, () => now, "ann"),
          keepPostgres(address, folders.ben, () => now, "ben"),
        ]);
      },
    },
  ];
}

async function shared(keepersAt: (now: Date) => readonly LibraryKeeper[]): Promise<Shared> {
  let keepers = keepersAt(MORNING);
  const close = async (): Promise<void> => {
    for (const keeper of keepers) await keeper.close();
  };
  onTestFinished(close);
  const [ann, ben = ann] = await Promise.all(keepers.map(async (keeper) => value(await keeper.library())));
  return {
    ann: ann!,
    ben: ben!,
    again: async (now) => {
      await close();
      // What is done at an opening is over when it is closed again.
      keepers = keepersAt(now).slice(0, 1);
      value(await keepers[0]!.library());
      await close();
      keepers = keepersAt(now);
      return value(await keepers[0]!.library());
    },
  };
}

/** So many minutes after the morning that tests begin at. */
export function later(minutes: number): Date {
  return new Date(MORNING.getTime() + minutes * 60_000);
}

/** So many days after it. */
export function daysLater(days: number): Date {
  return later(days * 24 * 60);
}

/** A circuit with this title, taken in by Ann with something on its bench. */
export async function begun({ ann }: Shared, title = "Horn", circuit: Circuit = sample(title)): Promise<string> {
  return value(await ann.circuits.create(circuit, { name: "Begun", bench: "as it came" }, MORNING)).id;
}

/** An edit that gives a circuit another title, made on a version of it and of its bench. */
export function edit(
  version: number,
  title: string,
  more: Partial<Save> & { readonly benchVersion?: number } = {},
): Save {
  const { benchVersion = version, ...rest } = more;
  return {
    version,
    circuit: sample(title),
    name: "title",
    bench: { bench: `bench of ${title}`, benchVersion },
    ...rest,
  };
}

/** All circuits of the library. */
export const ALL = { search: "", where: "library", from: 0, limit: 100 } as const;
