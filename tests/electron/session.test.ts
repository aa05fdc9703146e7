import { readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { addressOfRunning } from "../../electron/loopback/running.ts";
import { beginSession, type Session } from "../../electron/loopback/session.ts";
import { keepStore } from "../../electron/store/sqlite/keeper.ts";
import { lookOn } from "../../electron/store/sqlite/onlooker.ts";
import type { CallName } from "../../schemas/callNames.ts";
import { send } from "./http.ts";
import { code, got, hostOn, MORNING, ownFolder, value } from "./library.ts";
import { SAMPLES, sample, sampleText } from "./sample.ts";

async function begun(folder: string, file: string | null = null): Promise<Session> {
  const session = await beginSession({
    folder,
    pages: join(folder, "pages"),
    samples: SAMPLES,
    printer: "",
    takeHome: "",
    version: "0.0.0",
    file,
    now: () => MORNING,
    fault: (error) => {
      throw error;
    },
    refused: () => {},
  });
  onTestFinished(() => session.close());
  return session;
}

/** What the page that comes by this address is told to show. */
async function startOf(address: string) {
  return (await pageAt(address))("start", {});
}

/** The calls of a page that comes by this address. */
async function pageAt(address: string) {
  const { port, origin, pathname, search } = new URL(address);
  const { headers } = await send(Number(port), pathname + search);
  const cookie = headers["set-cookie"]![0]!.split(";")[0]!;
  return async (call: CallName, argument: object) => {
    const body = JSON.stringify(argument);
    const asked = { method: "POST", headers: { cookie, origin, "content-type": "application/json" }, body };
    return JSON.parse((await send(Number(port), `/call/${call}`, asked)).body);
  };
}

describe("a second start on the same library", () => {
  it("gets an address of the one that runs, with its file open there", async () => {
    const folder = ownFolder();
    const file = join(folder, "given.circuit.json");
    writeFileSync(file, sampleText());
    const first = await begun(join(folder, "library"));
    expect((await startOf(first.address)).value.open).toBeNull();
    const { port, key } = JSON.parse(readFileSync(join(folder, "library", "running.json"), "utf8"));
    // Another process would find the same; this one is told not to ask itself.
    const asked = { method: "POST", headers: { "content-type": "application/json" } };
    const reply = await send(port, "/again", { ...asked, body: JSON.stringify({ key, file }) });
    const second = JSON.parse(reply.body).address;
    expect(await startOf(second)).toMatchObject({ ok: true, value: { count: 1, open: expect.any(String) } });
    for (const body of ["{}", "null", JSON.stringify({ key: `${key}a` }), "[]"]) {
      expect((await send(port, "/again", { ...asked, body })).status).toBe(403);
    }
  });

  it.skipIf(process.platform === "win32")(
    "finds it by a lock that only this person can read, gone at the end",
    async () => {
      const folder = ownFolder();
      const session = await begun(folder);
      expect(session.isOwner).toBe(true);
      const lock = join(folder, "running.json");
      expect(statSync(lock).mode & 0o077).toBe(0);
      await session.close();
      expect(() => statSync(lock)).toThrow();
    },
  );

  it.each([
    ["nobody listens", { pid: 999_999, port: 1, key: "k".repeat(43) }],
    ["that is cut off", '{"pid":'],
    ["of another form", { pid: -1, port: "80" }],
  ])("heeds no lock by which %s", async (_, lock) => {
    const folder = ownFolder();
    writeFileSync(join(folder, "running.json"), typeof lock === "string" ? lock : JSON.stringify(lock));
    expect(await addressOfRunning(folder, null)).toBeNull();
    const session = await begun(folder);
    expect((await startOf(session.address)).ok).toBe(true);
  });

  it("that can neither have the library nor be let in shows it as it stands there, and has it once the other is closed", async () => {
    const folder = ownFolder();
    const first = await begun(folder);
    const owner = await pageAt(first.address);
    const made = await owner("circuits.create", { circuit: sample("Horn"), bench: "1" });
    const { id } = made.value;
    writeFileSync(join(folder, "running.json"), "{}");
    const second = await begun(folder);
    expect(second.isOwner).toBe(true);
    const looker = await pageAt(second.address);
    expect(await looker("start", {})).toMatchObject({
      ok: true,
      value: { count: 1, open: id, notices: [{ code: "store-looked-at" }] },
    });
    // The newest edits of the other are in it too, which lie in no file of the library's own yet.
    expect(await looker("circuits.open", { id })).toMatchObject({ value: { circuit: { title: "Horn" }, bench: "1" } });
    const save = { id, version: 1, bench: "2", benchVersion: 1, jobs: [] };
    expect(await looker("benches.save", save)).toMatchObject({ ok: false, refusal: { code: "store-looked-at" } });
    expect(await looker("circuits.rename", { id, title: "Mine" })).toMatchObject({
      refusal: { code: "store-looked-at" },
    });
    // A file is opened to be looked at, and goes nowhere.
    expect(await looker("circuits.import", { text: sampleText() })).toMatchObject({ ok: true });
    expect(await owner("circuits.list", {})).toMatchObject({ value: { count: 1 } });
    expect(await owner("circuits.open", { id })).toMatchObject({ value: { bench: "1" } });

    await first.close();
    expect(await looker("benches.save", save)).toMatchObject({ ok: true, value: { benchVersion: 2 } });
    expect(await looker("circuits.list", {})).toMatchObject({ value: { count: 1, rows: [{ title: "Horn" }] } });
    expect(await looker("nextRequest", {})).toMatchObject({
      value: { request: { ask: "tell", refusal: { code: "store-own-again" } } },
    });
    // A third start finds the one that has it now.
    const { port, key } = JSON.parse(readFileSync(join(folder, "running.json"), "utf8"));
    const asked = { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify({ key }) };
    const third = JSON.parse((await send(port, "/again", asked)).body).address;
    expect(new URL(third).origin).toBe(new URL(second.address).origin);
    expect(await startOf(third)).toMatchObject({ ok: true, value: { count: 1, notices: [] } });
  });

  it.skipIf(process.platform === "win32")("is told of the other where there is no room to show it", async () => {
    const folder = ownFolder();
    await got(hostOn(folder), "circuits.create", { circuit: sample("Horn") });
    const looking = lookOn(
      keepStore(folder, () => MORNING),
      () => MORNING,
    );
    onTestFinished(() => looking.close());
    const { TMPDIR } = process.env;
    process.env.TMPDIR = join(folder, "nowhere");
    try {
      expect(code(await looking.library())).toBe("store-locked");
    } finally {
      if (TMPDIR === undefined) delete process.env.TMPDIR;
      else process.env.TMPDIR = TMPDIR;
    }
    expect((await looking.library()).ok).toBe(true);
  });

  it("shows what is done in the other a little later", async () => {
    const folder = ownFolder();
    const owner = hostOn(folder);
    const { id } = await got(owner, "circuits.create", { circuit: sample("Horn") });
    const looking = lookOn(
      keepStore(folder, () => MORNING),
      () => MORNING,
    );
    onTestFinished(() => looking.close());
    const titles = async () => {
      const listed = value(
        await value(await looking.library()).circuits.list({ search: "", where: "library", from: 0, limit: 9 }),
      );
      return listed.rows.map(({ title }) => title);
    };
    expect(await titles()).toEqual(["Horn"]);
    await got(owner, "circuits.rename", { id, title: "Horn of the van" });
    await expect.poll(titles, { timeout: 60_000, interval: 500 }).toEqual(["Horn of the van"]);
  });
});
