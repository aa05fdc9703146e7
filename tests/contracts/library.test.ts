import { afterAll, beforeAll, describe } from "vitest";
import { startPostgres, type TestServer } from "../postgres/server.ts";
import { besideContract } from "./library/beside.ts";
import { circuitsContract } from "./library/circuits.ts";
import { kinds } from "./library/given.ts";
import { workContract } from "./library/work.ts";

let server: TestServer | null = null;

// Where there is no PostgreSQL every test of this file fails, and the sentence says what to install.
beforeAll(async () => {
  server = await startPostgres();
}, 120_000);
afterAll(() => server?.close());

describe.each(kinds(() => server!))("a library in $name", (kind) => {
  circuitsContract(kind);
  besideContract(kind);
  workContract(kind);
});
