import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { ownFolder } from "./library.ts";
import { called, type Frame, fake, freshModules, isPrevented, loaded, names, OWN, PAGE, running } from "./mainStage.ts";
import { sampleText } from "./sample.ts";

beforeEach(freshModules);
afterEach(() => vi.unstubAllEnvs());

describe("before Electron is ready", () => {
  it("scheme, sandbox, own folder and the one instance are settled, in this order", async () => {
    const folder = ownFolder();
    await loaded(folder);
    expect(names()).toEqual(["scheme", "sandbox", "path", "lock"]);
    expect(fake.record.calls[0]![1]).toEqual([
      { scheme: "app", privileges: { standard: true, secure: true, supportFetchAPI: true } },
    ]);
    expect(fake.record.calls[2]).toEqual(["path", "userData", join(folder, "window")]);
    // Electron refuses a folder that is not there.
    expect(existsSync(join(folder, "window"))).toBe(true);
  });

  it("a folder that cannot be made is told of by the page, not by a fault", async () => {
    const file = join(ownFolder(), "file");
    writeFileSync(file, "");
    await running(join(file, "library"));
    expect(names()).not.toContain("path");
    expect(await called(OWN)).toMatchObject({ ok: false, refusal: { code: "store-no-folder" } });
  });

  it("a fault before there is a window is told, and ends the program", async () => {
    await loaded(ownFolder());
    fake.Menu.setApplicationMenu = () => {
      throw new Error("no menu");
    };
    fake.app.ready.resolve();
    await vi.waitFor(() => expect(names()).toContain("exit"));
    expect(fake.record.calls.slice(-2)).toEqual([
      ["error", "Wirefathom", "no menu"],
      ["exit", 1],
    ]);
  });

  it("a second instance gives up its file and opens nothing", async () => {
    fake.record.answers.hasLock = false;
    vi.stubEnv("WIREFATHOM_DATA", join(ownFolder(), "library"));
    await import("../../electron/main.ts");
    fake.app.ready.resolve();
    await wait(20);
    expect(names().slice(-2)).toEqual(["lock", "quit"]);
    expect(existsSync(join(process.env.WIREFATHOM_DATA!, "wirefathom.db"))).toBe(false);
  });
});

describe("the window", () => {
  it("gives its page nothing of the machine", async () => {
    const window = await running();
    expect(window.options.webPreferences).toEqual({
      preload: join("/program", "out", "electron", "preload.cjs"),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: true,
    });
    expect(fake.record.calls.find(([name]) => name === "load")).toEqual(["load", PAGE]);
  });

  it("is guarded before it is there", async () => {
    await running();
    const order = names();
    expect(order.indexOf("serve")).toBeLessThan(order.indexOf("window"));
    expect(order.indexOf("spelling")).toBeLessThan(order.indexOf("window"));
  });

  it("denies every permission, device and screen", async () => {
    await running();
    const { permissionRequest, permissionCheck, device, display } = fake.record.guards as Record<
      string,
      (...given: unknown[]) => unknown
    >;
    for (const permission of ["media", "geolocation", "openExternal", "clipboard-read", "fullscreen", "usb"]) {
      const granted: unknown[] = [];
      permissionRequest!({}, permission, (grant: unknown) => granted.push(grant));
      expect({ granted, check: permissionCheck!({}, permission) }).toEqual({ granted: [false], check: false });
    }
    expect(device!({})).toBe(false);
    const streams: unknown[] = [];
    display!({}, (chosen: unknown) => streams.push(chosen));
    expect(streams).toEqual([null]);
  });

  it.each(["will-navigate", "will-frame-navigate", "will-redirect", "will-attach-webview"])(
    "prevents %s",
    async (event) => {
      const window = await running();
      expect(isPrevented((given) => window.webContents.emit(event, given))).toBe(true);
    },
  );

  it("opens no other window and loads nothing down", async () => {
    const window = await running();
    const open = fake.record.guards.windowOpen as unknown as (details: unknown) => unknown;
    expect(open({ url: PAGE })).toEqual({ action: "deny" });
    expect(isPrevented((given) => window.webContents.session.emit("will-download", given))).toBe(true);
  });

  it.each([
    [`${PAGE}assets/a.js`, false],
    ["blob:app://wirefathom/1", false],
    ["data:image/png;base64,", false],
    ["app://elsewhere/", true],
    ["http://127.0.0.1/", true],
    ["https://example.com/", true],
    ["ws://example.com/", true],
    ["file:///etc/passwd", true],
    ["chrome://gpu", true],
    ["not an address", true],
  ])("asked for %s cancels it: %s", async (url, cancel) => {
    await running();
    const decided: unknown[] = [];
    const request = fake.record.guards.request as unknown as (...given: unknown[]) => void;
    request({ url }, (decision: unknown) => decided.push(decision));
    expect(decided).toEqual([{ cancel }]);
  });

  it("comes back where it was, maximized as it was", async () => {
    const folder = ownFolder();
    const window = await running(folder);
    expect(window.options).toMatchObject({ width: 1280, height: 800, show: false });
    window.close();
    fake.app.emit("will-quit", { preventDefault: () => {} });
    await vi.waitFor(() => expect(names().at(-1)).toBe("quit"));
    await freshModules();
    const again = await running(folder);
    expect(again.options).toMatchObject({ x: 10, y: 20, width: 900, height: 700 });
    expect(names()).toContain("maximize");
  });

  it("hides at once when it is closed, and leaves its page the time to save", async () => {
    const window = await running();
    expect(window.close()).toBe(true);
    expect([names().at(-1), window.isGone]).toEqual(["hide", false]);
    await vi.waitFor(() => expect(window.isGone).toBe(true), { timeout: 10_000 });
    expect(names()).toContain("quit");
  });
});

describe("what a class sees", () => {
  const open = (where: string) => called(OWN, "class.open", JSON.stringify({ id: "a-b-1", where }));

  it("fills the second screen, in a window that can ask for nothing", async () => {
    await running();
    fake.displays.push({ ...fake.displays[0]!, id: 2, bounds: { x: 1920, y: 0, width: 1280, height: 720 } });
    expect(await open("any")).toEqual({ ok: true, value: { shown: "window" } });
    const [, shown] = fake.record.windows;
    expect(shown!.options).toMatchObject({ x: 1920, y: 0, width: 1280, height: 720, fullscreen: true });
    expect(shown!.options.webPreferences).toMatchObject({ contextIsolation: true, sandbox: true });
    expect(shown!.options.webPreferences).not.toHaveProperty("preload");
    expect(fake.record.calls).toContainEqual(["load", `${PAGE}class.html#a-b-1`]);
    await open("any");
    expect(fake.record.windows).toHaveLength(2);
    await called(OWN, "class.close");
    expect(shown!.isGone).toBe(true);
  });

  it("fills the one screen there is with the window itself, or has one of its own that goes with it", async () => {
    const window = await running();
    expect(await open("any")).toEqual({ ok: true, value: { shown: "here" } });
    expect(fake.record.windows[0]!.isFullScreen()).toBe(true);
    await called(OWN, "class.close");
    expect(fake.record.windows[0]!.isFullScreen()).toBe(false);
    expect(await open("window")).toEqual({ ok: true, value: { shown: "window" } });
    expect(fake.record.windows[1]!.options).not.toHaveProperty("fullscreen");
    window.close();
    await vi.waitFor(() => expect(fake.record.windows[1]!.isGone).toBe(true), { timeout: 10_000 });
  });
});

describe("a page that fails", () => {
  it("is loaded again, and after the third time in a minute only if the person says so", async () => {
    const window = await running();
    const fail = (reason = "crashed") => window.webContents.emit("render-process-gone", {}, { reason });
    for (let time = 0; time < 3; time++) fail();
    expect(names().filter((name) => name === "reload")).toHaveLength(3);
    fake.record.answers.dialog = { response: 0 };
    fail();
    await vi.waitFor(() => expect(names().filter((name) => name === "reload")).toHaveLength(4));
    expect(names().filter((name) => name === "dialog")).toHaveLength(1);
    fake.record.answers.dialog = { response: 1 };
    fail("oom");
    await vi.waitFor(() => expect(window.isGone).toBe(true));
  });

  it("in order is left alone; one that hangs is asked about", async () => {
    const window = await running();
    window.webContents.emit("render-process-gone", {}, { reason: "clean-exit" });
    expect(names()).not.toContain("reload");
    fake.record.answers.dialog = { response: 1 };
    window.emit("unresponsive");
    await wait(5);
    expect(names()).not.toContain("crash");
    fake.record.answers.dialog = { response: 0 };
    window.emit("unresponsive");
    await vi.waitFor(() => expect(names()).toContain("crash"));
  });
});

describe("a call", () => {
  it("of the window's own page is answered", async () => {
    await running();
    expect(await called(OWN)).toMatchObject({ ok: true, value: { host: "electron", version: "1.2.3" } });
    expect(await called({ ...OWN, url: `${PAGE}index.html#x` })).toMatchObject({ ok: true });
  });

  it.each<readonly [string, Frame | null]>([
    ["a frame that is gone", null],
    ["a frame within the page", { url: PAGE, parent: {} }],
    ["another host of the scheme", { url: "app://elsewhere/", parent: null }],
    ["a host that begins alike", { url: "app://wirefathom.example/", parent: null }],
    ["a page of the web", { url: "https://wirefathom/", parent: null }],
    ["a file", { url: "file:///app://wirefathom/", parent: null }],
    ["an empty page", { url: "", parent: null }],
  ])("of %s is rejected", async (_, frame) => {
    await running();
    await expect(async () => called(frame)).rejects.toThrow("only the window's own page may ask");
  });

  it("whose name or argument is no text is rejected", async () => {
    await running();
    await expect(async () => called(OWN, "start", {})).rejects.toThrow();
    await expect(async () => called(OWN, 7)).rejects.toThrow();
  });

  it("goes over one channel only", async () => {
    await running();
    expect([...fake.record.handlers.keys()]).toEqual(["call"]);
  });

  it("that waits ends when its page leaves, and a file then goes to the next page", async () => {
    const window = await running();
    const file = join(ownFolder(), "a.circuit.json");
    writeFileSync(file, sampleText());
    const waiting = called(OWN, "nextRequest");
    await wait(20);
    window.webContents.emit("did-start-navigation", { isMainFrame: true, isSameDocument: true });
    window.webContents.emit("did-start-navigation", { isMainFrame: true, isSameDocument: false });
    expect(await waiting).toEqual({ ok: true, value: { request: null } });
    fake.app.emit("open-file", { preventDefault: () => {} }, file);
    expect(await called(OWN, "nextRequest")).toMatchObject({ value: { request: { ask: "open" } } });
  });
});

describe("a file from the desktop", () => {
  it("given at the start is open when the page asks what to show", async () => {
    const file = join(ownFolder(), "a.circuit.json");
    writeFileSync(file, sampleText());
    await running(ownFolder(), ["--inspect=0", file]);
    expect(await called(OWN)).toMatchObject({ value: { count: 1, open: expect.any(String) } });
  });

  it("of a second start reaches the page, and the window comes to the front", async () => {
    await running();
    const waiting = called(OWN, "nextRequest");
    await wait(20);
    fake.app.emit("second-instance", {}, [], "", { file: "/nowhere/a.circuit.json" });
    expect(await waiting).toMatchObject({ value: { request: { ask: "tell", refusal: { code: "file-missing" } } } });
    expect(names().at(-1)).toBe("focus");
  });

  it("on macOS is taken before the program is ready", async () => {
    const file = join(ownFolder(), "a.circuit.json");
    writeFileSync(file, sampleText());
    await loaded(ownFolder());
    expect(isPrevented((given) => fake.app.emit("open-file", given, file))).toBe(true);
    fake.app.ready.resolve();
    await vi.waitFor(() => expect(names()).toContain("load"));
    expect(await called(OWN)).toMatchObject({ value: { count: 1 } });
  });
});

describe("dialogs for files", () => {
  it("write where the person says, and begin there the next time", async () => {
    await running();
    const folder = ownFolder();
    const path = join(folder, "sheet.pdf");
    const argument = JSON.stringify({
      name: "sheet.pdf",
      content: Buffer.from("%PDF").toString("base64"),
      encoding: "base64",
    });
    fake.record.answers.dialog = { canceled: false, filePath: path };
    expect(await called(OWN, "files.save", argument)).toEqual({ ok: true, value: { done: "saved", where: path } });
    expect(readFileSync(path, "utf8")).toBe("%PDF");
    fake.record.answers.dialog = { canceled: true };
    expect(await called(OWN, "files.save", argument)).toEqual({ ok: true, value: { done: "cancelled" } });
    expect(fake.record.calls.at(-1)![2]).toMatchObject({
      defaultPath: path,
      properties: ["showOverwriteConfirmation"],
    });
    fake.record.answers.dialog = { canceled: false, filePath: join(folder, "no", "sheet.pdf") };
    expect(await called(OWN, "files.save", argument)).toMatchObject({ refusal: { code: "file-no-folder" } });
  });

  it("open the circuit that is chosen", async () => {
    await running();
    const file = join(ownFolder(), "a.circuit.json");
    writeFileSync(file, sampleText());
    fake.record.answers.dialog = { canceled: false, filePaths: [file] };
    expect(await called(OWN, "files.open")).toMatchObject({ value: { done: "opened", opened: { version: 1 } } });
    fake.record.answers.dialog = { canceled: true, filePaths: [] };
    expect(await called(OWN, "files.open")).toEqual({ ok: true, value: { done: "cancelled" } });
  });
});

describe("an entry of the menu", () => {
  it("reaches the page as a command", async () => {
    await running();
    const menus = fake.record.menu as readonly { readonly submenu: readonly { label?: string; click(): void }[] }[];
    menus
      .flatMap(({ submenu }) => submenu)
      .find(({ label }) => label === "Print...")!
      .click();
    expect(await called(OWN, "nextRequest")).toEqual({
      ok: true,
      value: { request: { ask: "menu", command: "print" } },
    });
  });
});
