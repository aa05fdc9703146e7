import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { MOST_REPORTS, reportsIn } from "../../electron/reports.ts";
import type { Mishap } from "../../schemas/mishap.ts";
import { ask, code, got, hostOn, MORNING, ownFolder } from "./library.ts";

const MISHAP: Mishap = {
  where: "page",
  said: "TypeError: nothing is there",
  at: "    at draw (app://wirefathom/assets/page.js:1:2)",
  did: ["throw", "open-panel order"],
  counts: { parts: 48, wires: 65 },
  shown: "a browser",
};

it("is kept for the person alone, says what it runs on, and names nobody's home", () => {
  const folder = ownFolder();
  const reports = reportsIn(folder, "1.2.3", () => MORNING);
  reports.note("circuits.save");
  const error = new Error(`no ${join(homedir(), "secret", "file")}`);
  const { text, file } = reports.keepOwn(error, "program");
  expect(readFileSync(file!, "utf8")).toBe(text);
  expect(statSync(file!).mode & 0o777).toBe(0o600);
  expect(statSync(join(folder, "reports")).mode & 0o777).toBe(0o700);
  expect(text).toContain("Wirefathom 1.2.3");
  expect(text).toContain(`Node ${process.versions.node}`);
  expect(text).toContain("Done last, newest first: circuits.save");
  expect(text).toContain(join("~", "secret", "file"));
  expect(text).not.toContain(homedir());
  expect(text).toMatch(/At:\n\s+at /);
});

it("stays with the newest others, and what else lies there stays too", () => {
  const folder = ownFolder();
  let at = MORNING.getTime();
  const later = (): Date => {
    at += 1_000;
    return new Date(at);
  };
  const reports = reportsIn(folder, "1.2.3", later);
  mkdirSync(join(folder, "reports"));
  writeFileSync(join(folder, "reports", "notes.txt"), "mine");
  const files = Array.from({ length: MOST_REPORTS + 3 }, () => reports.keepOwn("thrown", "program").file!);
  const left = readdirSync(join(folder, "reports")).map((name) => join(folder, "reports", name));
  expect(left.toSorted()).toEqual([...files.slice(3), join(folder, "reports", "notes.txt")].toSorted());
});

it("is given back all the same where the disk takes nothing", () => {
  const folder = ownFolder();
  writeFileSync(join(folder, "reports"), "a file where the folder should be");
  const { text, file } = reportsIn(folder, "1.2.3", () => MORNING).keepOwn(new Error("lost"), "window");
  expect([file, text.includes("Error: lost")]).toEqual([null, true]);
});

it("of a page is kept as the page tells it, and told where it lies", async () => {
  const folder = ownFolder();
  const host = hostOn(folder);
  const { text, file } = await got(host, "reports.keep", MISHAP);
  for (const words of ["nothing is there", "parts 48, wires 65", "throw, open-panel order", "assets/page.js:1:2"])
    expect(text).toContain(words);
  expect(file).toContain(join(folder, "reports"));
  expect(code(await ask(host, "reports.keep", { ...MISHAP, at: "x".repeat(20_001) }))).toBe("call-argument");
  expect(await got(host, "about", {})).toMatchObject({
    version: "0.0.0",
    library: folder,
    reports: join(folder, "reports"),
  });
  const keeper = { ...host.keeper, place: { where: "server", name: "school on 127.0.0.1" } as const };
  expect(await got({ ...host, keeper }, "about", {})).toMatchObject({ library: "school on 127.0.0.1" });
});
