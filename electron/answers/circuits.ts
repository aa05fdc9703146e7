import { type Outcome, ok } from "../../core/base/outcome.ts";
import { LIBRARY_NAMES } from "../../core/base/words/library.ts";
import { formatCircuit, readCircuit } from "../../schemas/circuit.ts";
import { fileNameOf } from "../fileName.ts";
import type { Library, Standing } from "../store/library.ts";
import type { AnswersOf, Host } from "./host.ts";
import { sampleOf } from "./samples.ts";

/** What the library answers. Every one refuses `store-...` where the library cannot be opened. */
export const CIRCUIT_ANSWERS: AnswersOf<
  | "circuits.list"
  | "circuits.open"
  | "circuits.close"
  | "circuits.read"
  | "circuits.create"
  | "circuits.fromSample"
  | "circuits.import"
  | "circuits.save"
  | "circuits.standing"
  | "circuits.duplicate"
  | "circuits.rename"
  | "circuits.remove"
  | "circuits.restore"
  | "circuits.exportText"
  | "benches.save"
> = {
  "circuits.list": (asked, host) => withLibrary(host, ({ circuits }) => circuits.list(asked)),

  "circuits.open": ({ id }, host) => withLibrary(host, ({ circuits }) => circuits.open(id, host.now())),

  "circuits.close": (_, host) => withLibrary(host, ({ recent }) => recent.clear()),

  "circuits.read": ({ id }, host) => withLibrary(host, ({ circuits }) => circuits.read(id)),

  "circuits.create": ({ circuit, bench, jobs, page }, host) =>
    withLibrary(host, ({ circuits }) =>
      circuits.create(circuit, { name: LIBRARY_NAMES.begun, bench, jobs, page }, host.now()),
    ),

  "circuits.fromSample": async ({ sample }, host) => {
    const circuit = await sampleOf(host, sample);
    if (!circuit.ok) return circuit;
    return withLibrary(host, ({ circuits }) =>
      circuits.create(circuit.value, { name: LIBRARY_NAMES.sample }, host.now()),
    );
  },

  "circuits.import": async ({ text }, host) => {
    const circuit = readCircuit(text);
    if (!circuit.ok) return circuit;
    return withLibrary(host, ({ circuits }) => circuits.bringIn({ circuit: circuit.value, pictures: [] }, host.now()));
  },

  "circuits.save": ({ id, bench, benchVersion, ...save }, host) =>
    kept(host, ({ circuits }, now) => circuits.save(id, { ...save, bench: { bench, benchVersion } }, now)),

  "circuits.standing": ({ id }, host) => withLibrary(host, ({ circuits }) => circuits.standing(id)),

  "benches.save": ({ id, ...save }, host) => kept(host, ({ benches }, now) => benches.save(id, save, now)),

  "circuits.duplicate": ({ id }, host) => withLibrary(host, ({ circuits }) => circuits.duplicate(id, host.now())),

  "circuits.rename": ({ id, title }, host) =>
    withLibrary(host, ({ circuits }) => circuits.rename(id, title, host.now())),

  "circuits.remove": ({ id, isForGood }, host) =>
    withLibrary(host, ({ circuits }) => circuits.remove(id, isForGood, host.now())),

  "circuits.restore": ({ id }, host) => withLibrary(host, ({ circuits }) => circuits.restore(id)),

  "circuits.exportText": ({ id }, host) =>
    withLibrary(host, async ({ circuits }) => {
      const found = await circuits.read(id);
      if (!found.ok) return found;
      const { circuit } = found.value;
      return ok({ text: formatCircuit(circuit), name: fileNameOf(circuit.title, "circuit.json") });
    }),
};

/** What a function makes of the open library, or why it cannot be opened. */
export async function withLibrary<T>(host: Host, use: (library: Library) => Promise<Outcome<T>>): Promise<Outcome<T>> {
  const library = await host.keeper.library();
  return library.ok ? use(library.value) : library;
}

/** The same where something is saved: the versions that stand, and when they were kept. */
function kept(
  host: Host,
  save: (library: Library, now: Date) => Promise<Outcome<Standing>>,
): Promise<Outcome<Standing & { readonly saved: string }>> {
  return withLibrary(host, async (library) => {
    const now = host.now();
    const stands = await save(library, now);
    return stands.ok ? ok({ ...stands.value, saved: now.toISOString() }) : stands;
  });
}
