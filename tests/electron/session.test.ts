import { readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { addressOfRunning } from "../../electron/loopback/running.ts";
import { beginSession, type Session } from "../../electron/loopback/session.ts";
import { send } from "./http.ts";
import { MORNING, ownFolder } from "./library.ts";
import { SAMPLES, sampleText } from "./sample.ts";

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
  const { port, origin, pathname, search } = new URL(address);
  const { headers } = await send(Number(port), pathname + search);
  const cookie = headers["set-cookie"]![0]!.split(";")[0]!;
  const asked = { method: "POST", headers: { cookie, origin, "content-type": "application/json" }, body: "{}" };
  return JSON.parse((await send(Number(port), "/call/start", asked)).body);
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

  it("that can neither have the library nor be let in shows the page, which says why", async () => {
    const folder = ownFolder();
    await begun(folder);
    writeFileSync(join(folder, "running.json"), "{}");
    const second = await begun(folder);
    expect(second.isOwner).toBe(true);
    expect(await startOf(second.address)).toMatchObject({ ok: false, refusal: { code: "store-locked" } });
  });
});
