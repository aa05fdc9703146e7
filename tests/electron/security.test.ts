import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { CONTENT_SECURITY_POLICY, HEADERS } from "../../electron/headers.ts";
import { projectFiles, textOf } from "../sources.ts";
import { ELECTRON_RELEASED, supportEnds } from "../support.ts";
import { send } from "./http.ts";
import { type Frame, fake, freshModules, isPrevented, loaded, names, PAGE, running } from "./mainStage.ts";
import { ROOT } from "./sample.ts";
import { cookieOf, served } from "./served.ts";

// The numbers are those of Electron's own list, "Security, Native Capabilities, and Your Responsibility".

beforeEach(freshModules);
afterEach(() => vi.unstubAllEnvs());

/** What every window that the program opens lets its page do: the program's own and that of a class. */
async function allPreferences(): Promise<readonly Readonly<Record<string, unknown>>[]> {
  await running();
  const { classroomOf } = await import("../../electron/window/classroom.ts");
  for (const isDeveloped of [true, false]) classroomOf(isDeveloped, () => null).open({ id: "a", where: "window" });
  const { windows } = fake.record;
  expect(windows).toHaveLength(3);
  return windows.map(({ options }) => options.webPreferences);
}

/** Files of the program that go out with it, with those of its text in which a word stands. */
function shippedWith(word: RegExp): readonly string[] {
  const shipped = projectFiles().filter((path) =>
    /^(?:core|schemas|electron|renderer)\/.*\.(?:ts|tsx|cjs|html)$/.test(path),
  );
  expect(shipped.length).toBeGreaterThan(400);
  return shipped.filter((path) => word.test(textOf(path)));
}

/** Whether a request of the page is let go on. */
function isLet(url: string): boolean {
  const decided: { readonly cancel: boolean }[] = [];
  const request = fake.record.guards.request as unknown as (...given: unknown[]) => void;
  request({ url }, (decision: { readonly cancel: boolean }) => decided.push(decision));
  return !decided[0]!.cancel;
}

const address = fc.oneof(
  fc.webUrl(),
  fc
    .tuple(
      fc.constantFrom("app", "http", "https", "ws", "file", "ftp", "chrome", "javascript", "about"),
      fc.domain(),
      fc.webPath(),
    )
    .map(([scheme, host, path]) => `${scheme}://${host}${path}`),
  fc.constantFrom(
    "app://wirefathom.example/",
    "app://wirefathom@example.com/",
    "app://wirefathom:80/",
    "APP://wirefathom\\@a/",
    "",
  ),
);

describe("Electron's list", () => {
  it("1: nothing is loaded but the page's own files", async () => {
    await running();
    expect(isLet(`${PAGE}assets/a.js`)).toBe(true);
    fc.assert(
      fc.property(address, (url) => {
        const own = URL.parse(url);
        expect(isLet(url)).toBe(own?.protocol === "app:" && own.host === "wirefathom");
      }),
      { numRuns: 500 },
    );
  });

  it("2: no page has Node, nor have its workers and frames", async () => {
    for (const preferences of await allPreferences()) {
      expect(preferences).toMatchObject({
        nodeIntegration: false,
        nodeIntegrationInWorker: false,
        nodeIntegrationInSubFrames: false,
      });
    }
  });

  it("3: every page is kept apart from its preload", async () => {
    for (const preferences of await allPreferences()) expect(preferences.contextIsolation).toBe(true);
  });

  it("4: every page is in the sandbox, before the first is there, and nothing shipped turns it off", async () => {
    for (const preferences of await allPreferences()) expect(preferences.sandbox).toBe(true);
    expect(names().indexOf("sandbox")).toBeLessThan(names().indexOf("window"));
    // Only the browser that paints a picture for the command line: root has no sandbox to give it, and it is shown our own drawing.
    expect(shippedWith(/no-sandbox|disable-web-security|ignore-certificate/)).toEqual(["electron/print/png.ts"]);
  });

  it("5: no permission, device or screen is granted, whichever is asked for", async () => {
    await running();
    const { permissionRequest, permissionCheck, device } = fake.record.guards as Record<
      string,
      (...given: unknown[]) => unknown
    >;
    fc.assert(
      fc.property(fc.string(), fc.webUrl(), (permission, origin) => {
        const granted: unknown[] = [];
        permissionRequest!({}, permission, (grant: unknown) => granted.push(grant));
        expect([
          granted,
          permissionCheck!({}, permission, origin),
          device!({ deviceType: permission, origin }),
        ]).toEqual([[false], false, false]);
      }),
      { numRuns: 100 },
    );
  });

  it.each([
    ["6: the rules between sites stay on", "webSecurity", true],
    ["8: no insecure content is let in", "allowRunningInsecureContent", undefined],
    ["9: nothing experimental is on", "experimentalFeatures", undefined],
    ["10: no feature of the engine is switched on", "enableBlinkFeatures", undefined],
    ["11: there is no view of another page", "webviewTag", false],
  ])("%s", async (_, name, value) => {
    for (const preferences of await allPreferences()) expect(preferences[name]).toBe(value);
    expect(shippedWith(new RegExp(`appendSwitch|${name}: ${value !== true}`))).toEqual([]);
  });

  it("7: one policy goes with every page of both hosts, and lets run only its own files", async () => {
    expect(CONTENT_SECURITY_POLICY).toMatch(/^default-src 'none'; script-src 'self'; style-src 'self'/);
    expect(CONTENT_SECURITY_POLICY).not.toMatch(/unsafe|\*|https?:/);
    const { servePages } = await import("../../electron/protocol.ts");
    servePages(ROOT);
    const serve = fake.record.guards.serve as unknown as (request: object) => Promise<Response>;
    const inWindow = await serve({ url: `${PAGE}nothing`, method: "GET" });
    const loopback = await served();
    const { headers } = await send(loopback.port, "/", { headers: await cookieOf(loopback) });
    for (const [name, value] of Object.entries(HEADERS))
      expect([inWindow.headers.get(name), headers[name]]).toEqual([value, value]);
  });

  it.each([
    ["12: no view of another page is attached", "will-attach-webview"],
    ["13: no page goes elsewhere", "will-navigate"],
    ["13: no frame goes elsewhere", "will-frame-navigate"],
    ["13: none is sent elsewhere", "will-redirect"],
  ])("%s", async (_, event) => {
    await running();
    const contents = new fake.FakeWindow({ webPreferences: {} }).webContents;
    expect(isPrevented((given) => contents.emit(event, given))).toBe(true);
  });

  it("14: no page opens a window, whichever it asks for", async () => {
    await running();
    const open = fake.record.guards.windowOpen as unknown as (details: unknown) => unknown;
    fc.assert(
      fc.property(address, (url) => {
        expect(open({ url })).toEqual({ action: "deny" });
      }),
      { numRuns: 50 },
    );
  });

  it("15: nothing is handed to the system to open", () => {
    // A check that finds nothing must be one that could.
    expect(shippedWith(/\bopenBrowser\b/).length).toBeGreaterThan(0);
    expect(shippedWith(/openExternal|openPath|\bshell\b[^"]*\} from "electron"/)).toEqual([]);
  });

  it("16: the Electron that is shipped has a known end of support", () => {
    const { devDependencies } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
    const major = Number(/^(\d+)\.\d+\.\d+$/.exec(devDependencies.electron)?.[1]);
    // `npm run audit` says when that is over: no test should fail by the passing of time alone.
    expect(ELECTRON_RELEASED).toHaveProperty(String(major));
    expect(supportEnds(45).toISOString().slice(0, 10)).toBe("2027-04-07");
  });

  it("17: every handler answers the window's own page only, whoever else asks", async () => {
    await running();
    expect(shippedWith(/\bipcMain\b/)).toEqual(["electron/window/calls.ts"]);
    const handlers = [...fake.record.handlers.entries()];
    expect(handlers.map(([channel]) => channel)).toEqual(["call"]);
    const sender = fake.record.windows[0]!.webContents;
    const frame: fc.Arbitrary<Frame | null> = fc.oneof(
      fc.constant(null),
      fc.record({ url: address, parent: fc.constant(null) }),
      fc.record({ url: fc.constant(PAGE), parent: fc.constant({ url: PAGE }) }),
    );
    const given = fc.array(fc.anything(), { maxLength: 3 });
    for (const [, handler] of handlers as unknown as [string, (...given: unknown[]) => Promise<unknown>][]) {
      await fc.assert(
        fc.asyncProperty(frame, given, async (senderFrame, all) => {
          await expect(async () => handler({ senderFrame, sender }, ...all)).rejects.toThrow(
            "only the window's own page",
          );
        }),
        { numRuns: 200 },
      );
      // And the own page gets a value, a refusal, or a rejection of what is no call.
      await fc.assert(
        fc.asyncProperty(fc.string(), fc.string(), async (name, text) => {
          const answer = JSON.parse(
            (await handler({ senderFrame: { url: PAGE, parent: null }, sender }, name, text)) as string,
          );
          expect(typeof answer.ok).toBe("boolean");
        }),
        { numRuns: 100 },
      );
    }
  });

  it("18: pages come by a scheme of our own, never from files", async () => {
    await loaded((await import("./library.ts")).ownFolder());
    expect(fake.record.calls.find(([name]) => name === "scheme")?.[1]).toEqual([
      { scheme: "app", privileges: { standard: true, secure: true, supportFetchAPI: true } },
    ]);
    expect(shippedWith(/loadFile\(|bypassCSP|registerFileProtocol|interceptFile/)).toEqual([]);
  });

  it("20: the preload gives the page one function, and no more of Electron", async () => {
    await import("../../electron/preload.ts");
    expect(Object.entries(fake.record.exposed).map(([name, api]) => [name, Object.keys(api)])).toEqual([
      ["wirefathom", ["call"]],
    ]);
    expect(textOf("electron/preload.ts")).toMatch(/import \{ contextBridge, ipcRenderer \} from "electron"/);
  });
});
