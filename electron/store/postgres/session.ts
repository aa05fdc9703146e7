import type { Outcome } from "../../../core/base/outcome.ts";
import type { Statement } from "./sql.ts";

/** One transaction that is open on the server, and whose it is. */
export interface Session {
  /** Id of the person who works with the library from here. */
  readonly person: string;
  /** What others are told of them while they set no name. */
  readonly name: string;
  /** The rows that a statement gives. */
  all<Row>(statement: Statement): Promise<Row[]>;
  /** The first of them, or null. */
  first<Row>(statement: Statement): Promise<Row | null>;
  /** Runs a statement and gives how many rows it changed. */
  run(statement: Statement): Promise<number>;
}

/**
 * Does one thing as one transaction, which is taken back where it refuses. One that only reads sees the library as it stood at
 * one moment; one that writes waits for rows that another holds.
 */
export type Whole = <T>(kind: "read" | "write", act: (session: Session) => Promise<Outcome<T>>) => Promise<Outcome<T>>;
