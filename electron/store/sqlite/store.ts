import type { Refusal } from "../../../core/base/outcome.ts";
import type { Connection } from "./connect.ts";

/** The open library. One process has it at a time. */
export interface Store {
  readonly connection: Connection;
  readonly folder: string;
  /** Name of the person who works with it; absent where it is not known. */
  readonly person?: string;
  /** What the person must be told of how it was opened. */
  readonly notices: readonly Refusal[];
}
