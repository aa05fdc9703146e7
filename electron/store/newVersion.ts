/** The newest versions are all kept; of older ones the last of each day. */
export const ALL_KEPT = 200;

/** A version about to be kept: `text` is the circuit's file, `name` the edit that made it. */
export interface NewVersion {
  /** Key of the circuit. */
  readonly circuit: number;
  readonly version: number;
  readonly name: string;
  readonly text: string;
  /** Hashes of the pictures that it shows. */
  readonly pictures: readonly string[];
  /** Mark of the page that sent it. */
  readonly page: string | undefined;
}

/** Who kept something last, when, and the mark of the page it came from. */
export interface LastKept {
  readonly by: string;
  readonly saved: string;
  readonly page: string | null;
}

/** Where it is not known who kept something. */
export const NOBODY: LastKept = { by: "", saved: new Date(0).toISOString(), page: null };
