import type { CircuitRow, JobRow, SampleRow } from "../../schemas/calls.ts";
import type { Picture } from "../workers/picture.ts";

/** What the library shows. */
export interface Shelf {
  /** False until the library was read once. */
  readonly isRead: boolean;
  /** Circuits that match the search, newest edit first. */
  readonly circuits: readonly CircuitRow[];
  /** Circuits that were deleted and can be brought back, those that match the search. */
  readonly deleted: readonly CircuitRow[];
  /** Jobs that match the search, open ones first, newest first. */
  readonly jobs: readonly JobRow[];
  /** Jobs that were deleted and can be brought back, those that match the search. */
  readonly deletedJobs: readonly JobRow[];
  /** Name of the library where it is a shared one on a server; null for one on this machine. */
  readonly sharedAs: string | null;
  /** How many circuits there are without a search. */
  readonly count: number;
  readonly samples: readonly SampleRow[];
  readonly search: string;
  /** Pictures by key, `sample:1-roof-vents` or `circuit:ID@VERSION`; null while one is drawn. */
  readonly pictures: Readonly<Record<string, Picture | null>>;
  /** Why the library cannot be read, in a sentence; null where it can. */
  readonly trouble: string | null;
  /** Circuit whose title is being typed. */
  readonly renaming: string | null;
  /** What was on the bench last, as `opensKey` has it: whoever comes back finds it again. */
  readonly last: string | null;
}

/** The shelf before anything was read. */
export const EMPTY_SHELF: Shelf = {
  isRead: false,
  circuits: [],
  deleted: [],
  jobs: [],
  deletedJobs: [],
  sharedAs: null,
  count: 0,
  samples: [],
  search: "",
  pictures: {},
  trouble: null,
  renaming: null,
  last: null,
};

/** Key of what opens a circuit, a sample or an exercise: it is found by it on the page. */
export function opensKey(
  what: { readonly id: string } | { readonly sample: string } | { readonly exercise: string },
): string {
  if ("exercise" in what) return `exercise:${what.exercise}`;
  return "id" in what ? `circuit:${what.id}` : `sample:${what.sample}`;
}

/** Key of a sample's picture. */
export function sampleKey({ sample }: SampleRow): string {
  return `sample:${sample}`;
}

/** Key of a circuit's picture: another version is another picture. */
export function circuitKey({ id, version }: CircuitRow): string {
  return versionKey(id, version);
}

/** Key of the picture of a circuit in one of its versions. */
export function versionKey(id: string, version: number): string {
  return `circuit:${id}@${version}`;
}

/**
 * Pictures that are still of use once the library was listed: of a circuit that is listed only the one of its present version, and
 * where all circuits are, none of another. Kept for ever, each edit would leave one behind.
 */
export function picturesOf({ pictures, circuits, jobs }: Shelf, areAll: boolean): Shelf["pictures"] {
  const shown = new Map<string, string>([
    ...jobs.map(({ circuit, version }) => [opensKey({ id: circuit }), versionKey(circuit, version)] as const),
    ...circuits.map((row) => [opensKey(row), circuitKey(row)] as const),
  ]);
  const isOfUse = (key: string): boolean => {
    const [circuit = "", version] = key.split("@");
    return version === undefined || (shown.get(circuit) ?? (areAll ? null : key)) === key;
  };
  return Object.fromEntries(Object.entries(pictures).filter(([key]) => isOfUse(key)));
}
