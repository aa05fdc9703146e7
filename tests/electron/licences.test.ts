import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { build, builtThirdParties, isBuilt } from "../../electron/build.ts";
import { LICENCES_TAKEN, lockOf, THIRD_PARTY_FILE, thirdParties, thirdPartyTable } from "../../electron/licences.ts";
import { ROOT } from "./sample.ts";

describe("what of others goes out with the program", () => {
  beforeAll(async () => {
    if (!isBuilt(ROOT)) await build(ROOT);
  }, 120_000);

  it("is written down as the build found it, in a table and in a file that the page can read", () => {
    const list = builtThirdParties(ROOT);
    // What a bundle holds, what stays beside it, and what only a worker or a take-home page uses.
    expect(list.map(({ name }) => name)).toEqual(
      expect.arrayContaining([
        "react",
        "konva",
        "elkjs",
        "pdfjs-dist",
        "better-sqlite3",
        "electron",
        "modern-gif",
        "zod",
      ]),
    );
    expect(list.map(({ name }) => name)).not.toContain("vitest");
    expect(readFileSync(join(ROOT, THIRD_PARTY_FILE), "utf8"), "npm run licences writes it anew").toBe(
      thirdPartyTable(list),
    );
    expect(JSON.parse(readFileSync(join(ROOT, "out", "renderer", "licences.json"), "utf8"))).toEqual(list);
  });

  it("has the versions of the lock file", () => {
    const locked = Object.entries(lockOf(ROOT)).map(
      ([path, { version }]) => `${path.split("node_modules/").at(-1)}@${version}`,
    );
    for (const { name, version } of builtThirdParties(ROOT)) expect(locked).toContain(`${name}@${version}`);
  });

  it("is under licences that are taken, each with its whole text and a source", () => {
    for (const one of builtThirdParties(ROOT)) {
      expect(LICENCES_TAKEN, one.name).toContain(one.licence);
      expect(one.text, one.name).toMatch(/copyright|public licen[cs]e|apache license/i);
      // The shortest of them, ISC, has three paragraphs.
      expect(one.text.length, one.name).toBeGreaterThan(700);
      expect(URL.parse(one.source)?.protocol, one.name).toBe("https:");
    }
  });

  it("counts what a package needs in turn, each once", () => {
    const names = thirdParties(ROOT, ["node_modules/react"]).map(({ name, version }) => `${name}@${version}`);
    expect(new Set(names).size).toBe(names.length);
    expect(names).toEqual(
      expect.arrayContaining([expect.stringMatching(/^react@/), expect.stringMatching(/^node-addon-api@/)]),
    );
    expect(names.some((name) => name.startsWith("konva@"))).toBe(false);
  });
});
