import { readFileSync } from "node:fs";
import { isBuiltin } from "node:module";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { buildWindow } from "../../electron/build.ts";
import { ownFolder } from "./library.ts";
import { ROOT } from "./sample.ts";

describe("the built window", () => {
  it("is one file each of CommonJS, and its preload loads nothing but Electron", async () => {
    const folder = ownFolder();
    await buildWindow(ROOT, folder);
    const text = (name: string): string => readFileSync(join(folder, `${name}.cjs`), "utf8");
    const required = (name: string): readonly string[] =>
      [...new Set([...text(name).matchAll(/\brequire\("([^"]+)"\)/g)].map((match) => match[1]!))].toSorted();
    expect(required("preload")).toEqual(["electron"]);
    const packages = (name: string) => required(name).filter((each) => !isBuiltin(each));
    expect(packages("main")).toEqual(["better-sqlite3", "electron"]);
    expect(packages("printer")).toEqual(["pdfkit"]);
    for (const name of ["main", "preload", "printer"]) {
      expect(text(name)).not.toMatch(/\bimport\.meta\b|^import /m);
    }
    expect(text("preload").length).toBeLessThan(5_000);
  });
});
