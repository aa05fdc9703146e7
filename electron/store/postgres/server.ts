import type { Client, PoolClient, PoolConfig } from "pg";
import { type Outcome, ok } from "../../../core/base/outcome.ts";
import type { ServerAddress } from "./address.ts";
import { isInTheWay, serverRefusal } from "./failure.ts";
import type { Session, Whole } from "./session.ts";
import type { Statement } from "./sql.ts";

/** The schema that all tables of a library are in. */
export const SCHEMA = "wirefathom";

/** Lines kept open at most: a program asks a few things at once, and a server has lines for a hundred or so. */
const LINES = 4;
const CONNECT_MS = 8_000;
const STATEMENT_MS = 20_000;
/** Longest that one waits for what another holds. */
const LOCK_MS = 10_000;
const IDLE_MS = 30_000;
/** A transaction that meets another one is tried so often. */
const TRIES = 4;

/** Kinds of values as PostgreSQL numbers them (`pg_type`): whole numbers of 8 bytes, and moments. */
const INT8 = 20;
const TIMESTAMPTZ = 1184;

const BEGIN = {
  read: "BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY",
  write: "BEGIN ISOLATION LEVEL READ COMMITTED",
} as const;

/** The line to a server: it is drawn anew by itself where it broke. */
export interface Server {
  /** Transactions of one person. */
  wholeOf(person: string, name: string): Whole;
  /** A transaction outside of any person, as for upgrades. It throws what the server says. */
  plainly<T>(act: (run: (text: string, values?: readonly unknown[]) => Promise<Row[]>) => Promise<T>): Promise<T>;
  /** Waits for what is under way, and lets go of the server. */
  close(): Promise<void>;
}

type Row = Record<string, unknown>;

/** A line to a server; nothing is asked of it yet. The client is loaded only now, since few libraries are on one. */
export async function lineTo(address: ServerAddress): Promise<Server> {
  const { Pool, types } = await import("pg").then((loaded) => loaded.default ?? loaded);
  const pool = new Pool(configOf(address, types.getTypeParser));
  // A line that breaks while nobody uses it is drawn anew when it is needed.
  pool.on("error", () => {});
  pool.on("connect", (client: Client) => client.on("error", () => {}));

  const once = async <T>(kind: keyof typeof BEGIN, act: (client: PoolClient) => Promise<Outcome<T>>) => {
    const client = await begun(() => pool.connect(), BEGIN[kind]);
    try {
      const outcome = await act(client);
      await client.query(outcome.ok ? "COMMIT" : "ROLLBACK");
      client.release();
      return outcome;
    } catch (error) {
      // Whatever is open on it ends with it.
      client.release(true);
      throw error;
    }
  };
  return {
    wholeOf: (person, name) => async (kind, act) => {
      for (let attempt = 1; ; attempt++) {
        try {
          return await once(kind, (client) => act(sessionOn(client, person, name)));
        } catch (error) {
          if (attempt < TRIES && isInTheWay(error)) continue;
          const refusal = serverRefusal(error, address);
          if (!refusal) throw error;
          return { ok: false, refusal };
        }
      }
    },
    plainly: async (act) => {
      const done = await once("write", async (client) =>
        ok(await act(async (text, values = []) => (await client.query(text, [...values])).rows)),
      );
      if (!done.ok) throw new Error("broken invariant: it cannot refuse");
      return done.value;
    },
    close: () => pool.end(),
  };
}

/** A line with a transaction begun on it; where one that was idle turns out to be broken, nothing was done yet and another is taken. */
async function begun(connect: () => Promise<PoolClient>, begin: string): Promise<PoolClient> {
  for (let line = 0; ; line++) {
    const client = await connect();
    try {
      await client.query(begin);
      return client;
    } catch (error) {
      client.release(true);
      if (line >= LINES) throw error;
    }
  }
}

function sessionOn(client: PoolClient, person: string, name: string): Session {
  const ask = ({ text, values }: Statement) => client.query<Row>(text, [...values]);
  return {
    person,
    name,
    all: async <R>(statement: Statement) => (await ask(statement)).rows as R[],
    first: async <R>(statement: Statement) => ((await ask(statement)).rows[0] as R | undefined) ?? null,
    run: async (statement) => (await ask(statement)).rowCount ?? 0,
  };
}

function configOf(
  { host, port, database, user, password, sealing, vouching }: ServerAddress,
  parserOf: typeof import("pg").types.getTypeParser,
): PoolConfig {
  return {
    host,
    port,
    database,
    user,
    ...(password !== null && { password }),
    ssl:
      sealing === "disable"
        ? false
        : { rejectUnauthorized: sealing === "verify-full", ...(vouching !== null && { ca: vouching }) },
    max: LINES,
    connectionTimeoutMillis: CONNECT_MS,
    idleTimeoutMillis: IDLE_MS,
    statement_timeout: STATEMENT_MS,
    query_timeout: STATEMENT_MS + 5_000,
    lock_timeout: LOCK_MS,
    idle_in_transaction_session_timeout: STATEMENT_MS,
    keepAlive: true,
    application_name: "Wirefathom",
    options: `-c search_path=${SCHEMA}`,
    types: {
      getTypeParser: ((oid: number, format?: "text" | "binary") => {
        if (oid === INT8) return Number;
        if (oid === TIMESTAMPTZ) return (text: string) => new Date(text).toISOString();
        return parserOf(oid, format);
      }) as typeof parserOf,
    },
  };
}
