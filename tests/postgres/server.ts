import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A PostgreSQL server of a test's own, on 127.0.0.1 and a port that is free. */
export interface TestServer {
  /** Connection string of a new, empty database on it. */
  newDatabase(): string;
  /** Runs a statement as the server's owner, in a database of that name. */
  run(database: string, statement: string): string;
  readonly port: number;
  /** Stops it at once, as where its machine loses power; what was committed stays. */
  kill(): Promise<void>;
  /** Starts it again where it was. */
  start(): Promise<void>;
  /** Ends it, and takes its folder away. */
  close(): Promise<void>;
}

/** What to say where there is none. */
export const NO_POSTGRES =
  "PostgreSQL is not installed, and the shared library's tests need it: apt-get install postgresql";

const START_MS = 60_000;

/** Folder of PostgreSQL's programs, the newest that is here; null where none is. Debian keeps them out of the path. */
export function postgresPrograms(): string | null {
  const debian = "/usr/lib/postgresql";
  const folders = existsSync(debian)
    ? readdirSync(debian)
        .toSorted((one, other) => Number(other) - Number(one))
        .map((version) => join(debian, version, "bin"))
    : [];
  return (
    [...folders, ...(process.env.PATH ?? "").split(":")].find((folder) => existsSync(join(folder, "initdb"))) ?? null
  );
}

/** Starts one; `settingsIn` gives further settings, and may lay files into its folder. Throws the sentence that says what to install. */
export async function startPostgres(settingsIn: (folder: string) => readonly string[] = () => []): Promise<TestServer> {
  const programs = postgresPrograms();
  if (programs === null) throw new Error(NO_POSTGRES);
  const folder = mkdtempSync(join(tmpdir(), "wirefathom-postgres-"));
  const who = unprivileged(folder);
  const data = join(folder, "data");
  const made = spawnSync(
    join(programs, "initdb"),
    ["-D", data, "-U", "owner", "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync", "--no-instructions"],
    { ...who, cwd: folder, encoding: "utf8" },
  );
  if (made.status !== 0) throw new Error(`PostgreSQL did not begin: ${made.stderr}`);
  const port = await freePort();
  const settings = ["listen_addresses=127.0.0.1", `port=${port}`, `unix_socket_directories=${folder}`, "fsync=off"];
  const words = ["-D", data, ...[...settings, ...settingsIn(folder)].flatMap((setting) => ["-c", setting])];
  let server: ReturnType<typeof spawn> | null = null;
  let databases = 0;

  const run = (database: string, statement: string): string => {
    const line = [
      "-h",
      folder,
      "-p",
      String(port),
      "-U",
      "owner",
      "-d",
      database,
      "-AtqX",
      "-v",
      "ON_ERROR_STOP=1",
      "-c",
      statement,
    ];
    const done = spawnSync(join(programs, "psql"), line, { cwd: folder, encoding: "utf8" });
    if (done.status !== 0) throw new Error(`psql: ${done.stderr}`);
    return done.stdout.trim();
  };
  const start = async (): Promise<void> => {
    server = spawn(join(programs, "postgres"), words, { ...who, cwd: folder, stdio: ["ignore", "ignore", "pipe"] });
    let said = "";
    server.stderr?.on("data", (piece) => {
      said = `${said}${piece}`.slice(-4_000);
    });
    const ready = ["-h", "127.0.0.1", "-p", String(port), "-q"];
    const until = Date.now() + START_MS;
    while (spawnSync(join(programs, "pg_isready"), ready).status !== 0) {
      if (server.exitCode !== null || Date.now() > until) throw new Error(`PostgreSQL did not start: ${said}`);
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  };
  const end = async (): Promise<void> => {
    if (!server || server.exitCode !== null) return;
    const ended = once(server, "exit");
    server.kill("SIGQUIT");
    await ended;
  };
  await start();
  return {
    port,
    run,
    start,
    newDatabase: () => {
      databases += 1;
      run("postgres", `CREATE DATABASE library${databases}`);
      return `postgres://owner@127.0.0.1:${port}/library${databases}`;
    },
    kill: end,
    close: async () => {
      await end();
      rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
    },
  };
}

/** PostgreSQL refuses to be run by root, so it is run by one who may do nothing else; the folder is theirs then. */
function unprivileged(folder: string): { readonly uid?: number; readonly gid?: number } {
  if (process.getuid?.() !== 0) return {};
  const nobody = { uid: 65_534, gid: 65_534 };
  chownSync(folder, nobody.uid, nobody.gid);
  return nobody;
}

async function freePort(): Promise<number> {
  const asked = createServer().listen(0, "127.0.0.1");
  await once(asked, "listening");
  const { port } = asked.address() as { readonly port: number };
  asked.close();
  await once(asked, "close");
  return port;
}
