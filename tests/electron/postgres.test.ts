import { spawnSync } from "node:child_process";
import { chmodSync, chownSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it, onTestFinished, vi } from "vitest";
import type { Library, LibraryKeeper } from "../../electron/store/library.ts";
import { readAddress, type ServerAddress } from "../../electron/store/postgres/address.ts";
import { keepPostgres } from "../../electron/store/postgres/keeper.ts";
import { lineTo } from "../../electron/store/postgres/server.ts";
import { upgraded } from "../../electron/store/postgres/upgrade.ts";
import { UPGRADES } from "../../electron/store/postgres/upgrades.ts";
import { startPostgres, type TestServer } from "../postgres/server.ts";
import { code, MORNING, ownFolder, value } from "./library.ts";
import { sample } from "./sample.ts";

let server: TestServer;
beforeAll(async () => {
  server = await startPostgres();
}, 120_000);
afterAll(() => server.close());

const ALL = { search: "", where: "library", from: 0, limit: 100 } as const;

const addressOf = (text: string): ServerAddress => value(readAddress(text, {}));

function keeperOn(text: string, folder = ownFolder()): LibraryKeeper {
  const keeper = keepPostgres(addressOf(text), folder, () => MORNING, "ann");
  onTestFinished(() => keeper.close());
  return keeper;
}

const libraryOn = async (text: string): Promise<Library> => value(await keeperOn(text).library());

describe("a library on a server", () => {
  it("is made once by programs that start at the same moment, and is there for all", async () => {
    const text = server.newDatabase();
    const opened = await Promise.all(Array.from({ length: 6 }, () => keeperOn(text).library()));
    expect(opened.map(({ ok }) => ok)).toEqual(Array(6).fill(true));
    const database = text.split("/").at(-1)!;
    const applied = server.run(database, "SELECT name FROM wirefathom.upgrades ORDER BY name");
    expect(applied.split("\n")).toEqual(UPGRADES.map(({ name }) => name));
  });

  it("of a newer program is refused and left as it is", async () => {
    const text = server.newDatabase();
    const database = text.split("/").at(-1)!;
    await libraryOn(text);
    server.run(database, "INSERT INTO wirefathom.upgrades VALUES ('900-next', now())");
    expect(code(await keeperOn(text).library())).toBe("store-newer");
  });

  it("keeps nothing of an upgrade that fails", async () => {
    const text = server.newDatabase();
    const line = await lineTo(addressOf(text));
    onTestFinished(() => line.close());
    const bad = { name: "901-bad", sql: "CREATE TABLE half (a integer); INSERT INTO nowhere VALUES (1)" };
    await expect(upgraded(line, MORNING, [...UPGRADES, bad])).rejects.toThrow("nowhere");
    const database = text.split("/").at(-1)!;
    expect(server.run(database, "SELECT to_regnamespace('wirefathom') IS NULL")).toBe("t");
    expect((await libraryOn(text)).circuits).toBeDefined();
  });

  it("tells a version, a job and a picture apart whose bytes changed on the disk", async () => {
    const text = server.newDatabase();
    const database = text.split("/").at(-1)!;
    const { circuits, versions } = await libraryOn(text);
    const { id } = value(await circuits.create(sample("Horn"), { name: "Begun", bench: "b" }, MORNING));
    value(await circuits.rename(id, "Horns", MORNING));
    server.run(database, "UPDATE wirefathom.versions SET text = set_byte(text, 40, 7) WHERE version = 2");
    expect(code(await versions.read(id, 2))).toBe("version-damaged");
    expect(code(await circuits.open(id, MORNING))).toBe("version-damaged");
    expect(value(await versions.read(id, 1)).title).toBe("Horn");
    server.run(
      database,
      "UPDATE wirefathom.benches SET state = '\\x00'; DELETE FROM wirefathom.versions WHERE version = 2;",
    );
    server.run(database, "UPDATE wirefathom.circuits SET version = 1");
    expect(value(await circuits.open(id, MORNING))).toMatchObject({ bench: null, benchVersion: 1 });
  });

  it("keeps who works with it by an id of this machine's own, which only they can read", async () => {
    const text = server.newDatabase();
    const folder = join(ownFolder(), "shared");
    const first = value(await keeperOn(text, folder).library());
    value(await first.settings.keep({ theme: "dark" }));
    const file = join(folder, "person.txt");
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(readFileSync(file, "utf8")).toMatch(/^[\da-f-]{36}\n$/);
    expect(value(await value(await keeperOn(text, folder).library()).settings.read()).theme).toBe("dark");
    expect(value(await (await libraryOn(text)).settings.read()).theme).toBe("system");
  });
});

describe("a server that goes away", () => {
  it("is refused while it is gone, in time, and answers again by itself", async () => {
    const text = server.newDatabase();
    const library = await libraryOn(text);
    await server.kill();
    expect(code(await library.circuits.list(ALL))).toBe("store-server-gone");
    expect(code(await keeperOn(text).library())).toBe("store-server-gone");
    await server.start();
    expect(value(await library.circuits.list(ALL)).count).toBe(0);
    const { port } = addressOf(text);
    server.run(
      "postgres",
      "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'Wirefathom'",
    );
    expect(value(await library.circuits.list(ALL)).count).toBe(0);
    expect(port).toBe(server.port);
  });

  it("in the middle of edits loses none that was answered for, and has none twice", async () => {
    const text = server.newDatabase();
    const { circuits, versions } = await libraryOn(text);
    const { id } = value(await circuits.create(sample("Edit 1"), { name: "Begun", bench: "1" }, MORNING));
    let version = 1;
    let benchVersion = 1;
    let failed = 0;
    for (let edit = 2; edit <= 40; edit++) {
      if (edit % 13 === 0) setTimeout(() => void server.kill().then(() => server.start()), edit % 7);
      for (;;) {
        const bench = { bench: String(edit), benchVersion };
        const save = { version, circuit: sample(`Edit ${edit}`), name: "title", bench, page: "the page" };
        const saved = await circuits.save(id, save, MORNING);
        if (saved.ok) {
          expect(saved.value).toMatchObject({ id, beside: null });
          ({ version, benchVersion } = saved.value);
          break;
        }
        failed += 1;
        expect(saved.refusal.code).toMatch(/^store-server-(gone|busy)$/);
        await new Promise((resolve) => setTimeout(resolve, 100));
      }
      expect(value(await whenThere(() => circuits.read(id))).circuit.title).toBe(`Edit ${edit}`);
    }
    expect(failed).toBeGreaterThan(0);
    expect(value(await circuits.list(ALL)).count).toBe(1);
    expect(value(await versions.list(id)).versions).toHaveLength(version);
    expect(value(await circuits.open(id, MORNING)).bench).toBe("40");
  });

  /** What a library answers once it does. */
  async function whenThere<T>(ask: () => Promise<T & { readonly ok: boolean }>): Promise<T> {
    for (;;) {
      const outcome = await ask();
      if (outcome.ok) return outcome;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  }
});

describe("who may not have it", () => {
  it.each([
    ["a database that is not there", (text: string) => text.replace(/library\d+$/, "nowhere"), "store-server-database"],
    ["a user that is not there", (text: string) => text.replace("owner@", "nobody-known@"), "store-server-denied"],
    ["a port on which nothing is", (text: string) => text.replace(/:\d+\//, ":1/"), "store-server-gone"],
    ["a line that must be sealed", (text: string) => `${text}?sslmode=require`, "store-server-no-tls"],
  ])("%s is told in its own sentence, without the password", async (_, wrong, expected) => {
    const text = wrong(server.newDatabase()).replace("@127", ":s3cret@127");
    const refused = await keeperOn(text).library();
    expect(code(refused)).toBe(expected);
    expect(JSON.stringify(refused)).not.toContain("s3cret");
  });

  it("a user without rights is told, and one with rights on all of it works", async () => {
    const text = server.newDatabase();
    const database = text.split("/").at(-1)!;
    await libraryOn(text);
    server.run(database, "CREATE ROLE learner LOGIN");
    expect(code(await keeperOn(text.replace("owner@", "learner@")).library())).toBe("store-server-rights");
    server.run(database, "GRANT USAGE ON SCHEMA wirefathom TO learner");
    server.run(database, "GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA wirefathom TO learner");
    expect((await keeperOn(text.replace("owner@", "learner@")).library()).ok).toBe(true);
  });
});

describe("a sealed line", () => {
  /** A server that takes passwords over a sealed line alone, and the file of its certificate. */
  async function sealed(): Promise<{
    readonly text: string;
    readonly certificate: string;
    readonly run: TestServer["run"];
  }> {
    let certificate = "";
    const strict = await startPostgres((folder) => {
      const [key, hba] = [join(folder, "server.key"), join(folder, "hba.conf")];
      certificate = join(folder, "server.crt");
      const asked = ["req", "-x509", "-newkey", "rsa:2048", "-nodes", "-days", "2", "-subj", "/CN=127.0.0.1"];
      const made = spawnSync(
        "openssl",
        [...asked, "-addext", "subjectAltName=IP:127.0.0.1", "-keyout", key, "-out", certificate],
        { encoding: "utf8" },
      );
      if (made.status !== 0) throw new Error(`openssl made no certificate: ${made.stderr}`);
      writeFileSync(hba, "local all all trust\nhostssl all all 127.0.0.1/32 scram-sha-256\n");
      for (const file of [key, certificate, hba]) {
        if (process.getuid?.() === 0) chownSync(file, 65_534, 65_534);
        chmodSync(file, 0o600);
      }
      return ["ssl=on", `ssl_cert_file=${certificate}`, `ssl_key_file=${key}`, `hba_file=${hba}`];
    });
    onTestFinished(() => strict.close());
    strict.run("postgres", "ALTER ROLE owner PASSWORD 'horse'");
    return { text: strict.newDatabase(), certificate, run: strict.run };
  }

  it("takes the right password alone, from string, surroundings or file of passwords, and proves the server by its certificate", async () => {
    const { text, certificate, run } = await sealed();
    const withPassword = text.replace("owner@", "owner:horse@");
    expect(code(await keeperOn(`${withPassword}?sslmode=disable`).library())).toBe("store-server-denied");
    expect(code(await keeperOn(`${withPassword}?sslmode=verify-full`).library())).toBe("store-server-certificate");
    const proven = `?sslmode=verify-full&sslrootcert=${certificate}`;
    expect((await keeperOn(withPassword + proven).library()).ok).toBe(true);
    expect((await keeperOn(`${withPassword}?sslmode=require`).library()).ok).toBe(true);
    const wrong = await keeperOn(`${text.replace("owner@", "owner:cow5@")}?sslmode=require`).library();
    expect(code(wrong)).toBe("store-server-denied");
    expect(JSON.stringify(wrong)).not.toContain("cow5");
    expect(
      run(
        "postgres",
        "SELECT bool_and(ssl) FROM pg_stat_ssl JOIN pg_stat_activity USING (pid) WHERE application_name = 'Wirefathom'",
      ),
    ).toBe("t");

    expect(code(await keeperOn(text + proven).library())).toBe("store-server-denied");
    const file = join(ownFolder(), "passwords");
    writeFileSync(file, "127.0.0.1:*:*:owner:horse\n", { mode: 0o600 });
    vi.stubEnv("PGPASSFILE", file);
    onTestFinished(() => void vi.unstubAllEnvs());
    expect((await keeperOn(text + proven).library()).ok).toBe(true);
    vi.stubEnv("PGPASSFILE", "/nowhere");
    vi.stubEnv("PGPASSWORD", "horse");
    expect((await keeperOn(text + proven).library()).ok).toBe(true);
  });
});
