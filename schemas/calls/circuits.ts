import { z } from "zod";
import { LIMITS } from "../limits.ts";
import { bench, CALL_LIMITS, type Call, circuit, circuitId, moment, nothing, shortWords, title } from "./call.ts";
import { jobsKept } from "./jobs.ts";

const version = z.int().min(1);
/** Counts what was changed on a bench; 0 is a bench of which nothing was kept. */
const benchVersion = z.int().min(0);

/** A circuit as the library lists it. */
export const circuitRow = z.strictObject({
  id: circuitId,
  title: z.string(),
  vehicle: z.string(),
  pages: z.int(),
  parts: z.int(),
  wires: z.int(),
  /** What does not hold together in it, and what is not drawn to its end; 0 and 0 is a tight drawing. */
  problems: z.int(),
  looseEnds: z.int(),
  version,
  made: moment,
  edited: moment,
  opened: moment.nullable(),
  /** When it went to the bin; null while it is in the library. */
  removed: moment.nullable(),
  /** Who kept it beside a circuit that another changed at once, empty where that is not known; null where it is none of those. */
  beside: z.string().nullable(),
});
/** A circuit as the library lists it. */
export type CircuitRow = z.infer<typeof circuitRow>;

/** A circuit brought to the bench, with the state its bench was left in; null where it never was on one. */
export const openedCircuit = z.strictObject({
  id: circuitId,
  version,
  circuit,
  bench: bench.nullable(),
  benchVersion,
  /** True where the circuit was changed since by somebody else: what was done to it cannot be undone from this bench. */
  isBenchOlder: z.boolean().optional(),
  /** True where a file was brought in that the library had already: what is open is the one it had, edits and all. */
  known: z.boolean(),
});
/** A circuit brought to the bench. */
export type OpenedCircuit = z.infer<typeof openedCircuit>;

const versionRow = z.strictObject({
  version,
  saved: moment,
  /** The edit that made it. */
  name: z.string(),
  /** Who made it; empty where that is not known. */
  by: z.string(),
});
/** A version as its list shows it. */
export type VersionRow = z.infer<typeof versionRow>;

const besideRow = z.strictObject({
  id: circuitId,
  title: z.string(),
  /** Who changed it last; empty where that is not known. */
  by: z.string(),
  edited: moment,
  /** True for the circuit that this one was kept beside; false for one that was kept beside this. */
  isFirst: z.boolean(),
});
/** A circuit that was changed at the same time as another, as it stands beside that. */
export type BesideRow = z.infer<typeof besideRow>;

const one = z.strictObject({ id: circuitId });
/** Who changed a circuit last, when, and whether it is in the bin now. */
const changed = { by: z.string(), saved: moment, isRemoved: z.boolean() };
/** A mark that a page gives itself: a save whose answer was lost is told by it from another page's. */
const page = z.string().max(64).optional();
/** Where it is kept now: `id` is another than was asked for where it was kept beside that, and `beside` says what had become of it. */
const saved = z.strictObject({
  id: circuitId,
  version,
  benchVersion,
  saved: moment,
  beside: z.strictObject(changed).nullable(),
});
/** Where a save was kept. */
export type SavedWhere = z.infer<typeof saved>;

/** Calls on the circuits of the library and on what stands on their benches. */
export const CIRCUIT_CALLS = {
  /** The library, newest edit first; with a search, the best match first. Every word must be found, as a word's beginning. */
  "circuits.list": {
    argument: z.strictObject({
      search: z.string().max(CALL_LIMITS.search).default(""),
      from: z.int().min(0).default(0),
      limit: z.int().min(1).max(CALL_LIMITS.rows).default(CALL_LIMITS.rows),
      where: z.enum(["library", "bin"]).default("library"),
    }),
    answer: z.strictObject({ rows: z.array(circuitRow), count: z.int() }),
  },
  /** Brings a circuit to the bench and notes that it is the open one. Refuses `circuit-unknown`, `version-damaged`. */
  "circuits.open": { argument: one, answer: openedCircuit },
  /** Notes that no circuit is open, so that the next start shows the library. */
  "circuits.close": { argument: nothing, answer: nothing },
  /** A circuit to look at only, as for its picture. */
  "circuits.read": { argument: one, answer: z.strictObject({ circuit, version }) },
  /** Takes a circuit into the library as a new one and opens it; the same page that sends it twice has it kept once. */
  "circuits.create": {
    argument: z.strictObject({ circuit, bench: bench.nullable().default(null), jobs: jobsKept, page }),
    answer: openedCircuit,
  },
  /** Takes a copy of a sample into the library and opens it. Refuses `sample-unknown`. */
  "circuits.fromSample": { argument: z.strictObject({ sample: shortWords }), answer: openedCircuit },
  /** Takes the text of a circuit file into the library and opens it; refuses as reading the file does. */
  "circuits.import": { argument: z.strictObject({ text: z.string().max(LIMITS.bytes) }), answer: openedCircuit },
  /**
   * Keeps one accepted edit: the circuit as it is now and the bench beside it. `version` is the one the edit was made
   * on, `benchVersion` that of the bench; `jobs` are kept in the same transaction. A circuit that did not change keeps its own. Where
   * another page changed circuit or bench since, the edit is kept beside them, as a circuit of its own.
   */
  "circuits.save": {
    argument: z.strictObject({
      id: circuitId,
      version,
      circuit,
      bench,
      benchVersion,
      name: shortWords,
      jobs: jobsKept,
      page,
    }),
    answer: saved,
  },
  /** Versions of a circuit, newest first. All of the newest 200 are kept, of older ones the last of each day. */
  "circuits.versions": {
    argument: one,
    answer: z.strictObject({ versions: z.array(versionRow), besides: z.array(besideRow) }),
  },
  /** How a circuit stands now, in the bin or not: a page that has it open asks now and then. */
  "circuits.standing": { argument: one, answer: z.strictObject({ version, ...changed }) },
  /** A circuit as it was in a version. */
  "circuits.version": { argument: z.strictObject({ id: circuitId, version }), answer: z.strictObject({ circuit }) },
  /** A second circuit with the same content under a title of its own. */
  "circuits.duplicate": { argument: one, answer: circuitRow },
  /** Gives a circuit another title, as a version of its own. Not for the circuit on the bench: there it is an edit. */
  "circuits.rename": { argument: z.strictObject({ id: circuitId, title }), answer: circuitRow },
  /**
   * Moves a circuit to the bin, where it stays for 30 days, and answers with its row. `isForGood` is for a sample on which
   * nothing was noted: it is let go of at once.
   */
  "circuits.remove": {
    argument: z.strictObject({ id: circuitId, isForGood: z.boolean().default(false) }),
    answer: circuitRow,
  },
  /** Brings a circuit back from the bin. */
  "circuits.restore": { argument: one, answer: circuitRow },
  /** A circuit as the text of its file, and the name for the file. */
  "circuits.exportText": { argument: one, answer: z.strictObject({ text: z.string(), name: z.string() }) },
  /**
   * Keeps what stands on a bench whose circuit did not change, as after a switch was thrown; beside, as `circuits.save`.
   * `isSight` says that only what is in sight differs: the bench keeps its version, and no other page is in its way. It is
   * not kept beside but refused, `circuit-changed-elsewhere` or `bench-changed-elsewhere`. A circuit that somebody else changed is not in the way of
   * the rest: it stays with the version that the page has.
   */
  "benches.save": {
    argument: z.strictObject({
      id: circuitId,
      version,
      bench,
      benchVersion,
      isSight: z.boolean().default(false),
      jobs: jobsKept,
      page,
    }),
    answer: saved,
  },
} as const satisfies Readonly<Record<string, Call>>;
