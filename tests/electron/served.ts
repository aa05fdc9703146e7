import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, onTestFinished } from "vitest";
import { type Loopback, type LoopbackLimits, startLoopback } from "../../electron/loopback.ts";
import { send } from "./http.ts";
import { hostOn, ownFolder, type TestHost } from "./library.ts";

/** A server with what stands behind it. */
export interface Served extends Loopback {
  readonly host: TestHost;
  readonly lines: readonly string[];
}

const JSON_TYPE = { "content-type": "application/json" };

/** A served page with a secret beside its folder. What it writes of refusals is to be had as `lines`. */
export async function served(limits: LoopbackLimits = {}): Promise<Served> {
  const folder = ownFolder();
  const pages = join(folder, "pages");
  mkdirSync(join(pages, "assets"), { recursive: true });
  writeFileSync(join(pages, "index.html"), "<!doctype html><title>page</title>");
  writeFileSync(join(pages, "assets", "main-1.js"), "export {}");
  writeFileSync(join(pages, "assets", "notes.md"), "not given out");
  writeFileSync(join(folder, "secret.txt"), "secret");
  symlinkSync(join(folder, "secret.txt"), join(pages, "link.txt"));
  const faults: unknown[] = [];
  const lines: string[] = [];
  const host = hostOn(join(folder, "library"));
  const loopback = await startLoopback(host, pages, (error) => faults.push(error), {
    refused: (line) => lines.push(line),
    ...limits,
  });
  onTestFinished(async () => {
    await loopback.close();
    expect(faults).toEqual([]);
  });
  return { ...loopback, host, lines };
}

/** Path of an address, with what stands after its question mark. */
export function pathOf(address: string): string {
  const { pathname, search } = new URL(address);
  return pathname + search;
}

/** The cookie of a browser that came in by a new address. */
export async function cookieOf(loopback: Loopback): Promise<Record<string, string>> {
  const { headers } = await send(loopback.port, pathOf(loopback.newAddress()));
  return { cookie: headers["set-cookie"]![0]!.split(";")[0]! };
}

/** What a page of this server sends with a call. */
export async function ownHeaders(loopback: Loopback): Promise<Record<string, string>> {
  return { ...(await cookieOf(loopback)), ...JSON_TYPE, origin: `http://127.0.0.1:${loopback.port}` };
}
