import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { noRequests } from "../../electron/answers/requests.ts";
import { dataFolder } from "../../electron/dataFolder.ts";
import { fileNameOf } from "../../electron/fileName.ts";
import { browserCommands, startFirst } from "../../electron/launch/browser.ts";
import {
  canShowWindow,
  electronProgram,
  fetchElectron,
  noteMissed,
  wasMissed,
} from "../../electron/launch/electron.ts";
import { open } from "../../electron/open.ts";
import { mayReload } from "../../electron/window/reloads.ts";
import { CALLS } from "../../schemas/calls.ts";
import { code, MORNING, ownFolder } from "./library.ts";

describe("the folder of the library", () => {
  it.each([
    ["linux", {}, "/h/.local/share/wirefathom"],
    ["linux", { XDG_DATA_HOME: "/data" }, "/data/wirefathom"],
    ["linux", { XDG_DATA_HOME: "relative" }, "/h/.local/share/wirefathom"],
    ["darwin", { XDG_DATA_HOME: "/data" }, "/h/Library/Application Support/Wirefathom"],
    ["win32", { APPDATA: "/roaming" }, "/roaming/Wirefathom"],
    ["win32", {}, "/h/AppData/Roaming/Wirefathom"],
    ["win32", { WIREFATHOM_DATA: "/tests" }, "/tests"],
    ["linux", { WIREFATHOM_DATA: "here" }, join(process.cwd(), "here").replaceAll("\\", "/")],
  ])("on %s with %j is %s", (platform, env, folder) => {
    expect(dataFolder({ platform, env, home: "/h" }).replaceAll("\\", "/")).toBe(folder);
  });
});

describe("the name of a file", () => {
  it.each([
    ["Roof vents", "Roof vents.pdf"],
    ["../../etc/passwd", "etc passwd.pdf"],
    ['a<b>:"c"|?*', "a b c.pdf"],
    ["...", "circuit.pdf"],
    ["NUL", "NUL circuit.pdf"],
    ["con.job", "con circuit.job.pdf"],
    ["Com\u00b2 .x", "Com\u00b2 circuit .x.pdf"],
    ["Console", "Console.pdf"],
    ["\u8eca".repeat(80), `${"\u8eca".repeat(60)}.pdf`],
    ["abc\u202efdp.exe", "abc fdp.exe.pdf"],
  ])("made from %j is %j", (title, name) => expect(fileNameOf(title, "pdf")).toBe(name));

  it("is one that may be written, whatever the title", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 300 }), (title) => {
        const name = fileNameOf(title, "circuit.json");
        expect(CALLS["files.save"].argument.safeParse({ name, content: "" }).success).toBe(true);
        // With what is put behind it while it is written.
        expect(Buffer.byteLength(`${name}.4194304.part`)).toBeLessThanOrEqual(255);
      }),
      { numRuns: 1_000 },
    );
  });
});

describe("requests from outside", () => {
  it("wait for a page, go to the one that asked last, and each to one", async () => {
    const requests = noRequests();
    requests.add({ file: "a" });
    expect(await requests.next(10)).toEqual({ file: "a" });
    const older = requests.next(50);
    const newer = requests.next(50);
    requests.add({ menu: "print" });
    expect([await older, await newer]).toEqual([null, { menu: "print" }]);
  });

  it("are not lost to a page that has gone", async () => {
    const requests = noRequests();
    const gone = new AbortController();
    const waiting = requests.next(1_000, gone.signal);
    gone.abort();
    requests.add({ menu: "undo" });
    expect([await waiting, await requests.next(10, gone.signal), await requests.next(10)]).toEqual([
      null,
      null,
      { menu: "undo" },
    ]);
  });

  it("keep the file of a start apart, the later in the place of the earlier", () => {
    const requests = noRequests();
    requests.setStartFile("a");
    requests.setStartFile("b");
    expect([requests.takeStartFile(), requests.takeStartFile()]).toEqual(["b", null]);
  });
});

describe("a start", () => {
  it.each([
    ["linux", {}, false, false],
    ["linux", { DISPLAY: ":0" }, false, true],
    ["linux", { WAYLAND_DISPLAY: "wayland-0" }, false, true],
    ["linux", { DISPLAY: ":0" }, true, false],
    ["darwin", {}, false, true],
    ["win32", {}, false, true],
  ])("on %s with %j, as root %s, can show a window: %s", (platform, env, isRoot, can) => {
    expect(canShowWindow({ platform, env }, isRoot)).toBe(can);
  });

  it("finds Electron only where its program is", () => {
    const root = ownFolder();
    const place = join(root, "node_modules", "electron");
    mkdirSync(join(place, "dist"), { recursive: true });
    writeFileSync(join(root, "package.json"), "{}");
    expect(electronProgram(root, {})).toBeNull();
    writeFileSync(join(place, "package.json"), "{}");
    expect(electronProgram(root, {})).toBeNull();
    writeFileSync(join(place, "path.txt"), "program");
    expect(electronProgram(root, {})).toBeNull();
    writeFileSync(join(place, "dist", "program"), "");
    expect(electronProgram(root, {})).toBe(join(place, "dist", "program"));
    expect(electronProgram(root, { ELECTRON_OVERRIDE_DIST_PATH: join(root, "elsewhere") })).toBeNull();
  });

  it.each([
    ["ends well", "", true],
    ["fails", "process.exit(1)", false],
    ["never ends", "setInterval(() => {}, 1_000)", false],
  ])("waits no longer than it may for an installer that %s", async (_, does, isFetched) => {
    const root = ownFolder();
    const place = join(root, "node_modules", "electron");
    mkdirSync(place, { recursive: true });
    writeFileSync(join(root, "package.json"), "{}");
    expect(await fetchElectron(root, 1)).toBe(false);
    writeFileSync(join(place, "package.json"), "{}");
    expect(await fetchElectron(root, 1)).toBe(false);
    writeFileSync(join(place, "install.js"), does);
    const began = performance.now();
    expect(await fetchElectron(root, does.startsWith("setInterval") ? 0.5 : 60)).toBe(isFetched);
    expect(performance.now() - began).toBeLessThan(30_000);
  });

  it("does not try again for a day what could not be fetched", () => {
    const folder = join(ownFolder(), "library");
    expect(wasMissed(folder, MORNING)).toBe(false);
    noteMissed(folder, MORNING);
    const later = (hours: number): Date => new Date(MORNING.getTime() + hours * 3_600_000);
    expect([0, 23, 25, -1].map((hours) => wasMissed(folder, later(hours)))).toEqual([true, true, false, false]);
    noteMissed(folder, null);
    expect(wasMissed(folder, MORNING)).toBe(false);
  });

  it("with a file that is no circuit is refused before anything is opened", async () => {
    const said: string[] = [];
    const console = { write: (text: string) => said.push(text), complain: (text: string) => said.push(text) };
    const file = join(ownFolder(), "a.circuit.json");
    expect(code(await open(file, console))).toBe("file-missing");
    writeFileSync(file, "[]");
    expect(code(await open(file, console))).toBe("file-not-json");
    expect(said).toEqual([]);
  });

  it("hands an address to the platform as one word, after no shell", () => {
    for (const platform of ["linux", "darwin", "win32"]) {
      for (const words of browserCommands(platform, "http://127.0.0.1:1/?t=a")) {
        expect(words.filter((word) => word.includes("127.0.0.1"))).toEqual(["http://127.0.0.1:1/?t=a"]);
      }
    }
  });

  it("passes over a browser that is not there", async () => {
    const made = join(ownFolder(), "made");
    const write = `require("node:fs").writeFileSync(${JSON.stringify(made)}, "")`;
    startFirst([
      ["no-such-browser", "http://127.0.0.1:1/"],
      [process.execPath, "-e", write],
    ]);
    await vi.waitFor(() => expect(existsSync(made)).toBe(true), { timeout: 60_000 });
  });
});

describe("a page that fails", () => {
  it("is loaded again three times in a minute, and later again", () => {
    const at = (seconds: number): Date => new Date(MORNING.getTime() + seconds * 1_000);
    expect(mayReload([at(0), at(1)], at(2))).toBe(true);
    expect(mayReload([at(0), at(1), at(2)], at(3))).toBe(false);
    expect(mayReload([at(0), at(1), at(2)], at(61))).toBe(true);
  });
});
