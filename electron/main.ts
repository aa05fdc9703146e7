import { mkdirSync } from "node:fs";
import { createRequire } from "node:module";
import { homedir } from "node:os";
import { join, resolve } from "node:path";
import { app, type BrowserWindow, dialog, Menu, session } from "electron";
import { WINDOW_NAMES } from "../core/base/words/window.ts";
import { sentence } from "../core/base/words.ts";
import type { Front } from "../schemas/calls/window.ts";
import { FIRST_SETTINGS } from "../schemas/settings.ts";
import type { Host } from "./answers/host.ts";
import { noRequests } from "./answers/requests.ts";
import { dataFolder } from "./dataFolder.ts";
import { menuTemplate } from "./menu.ts";
import { TAKE_HOME } from "./print/takeHome.ts";
import { registerScheme, servePages } from "./protocol.ts";
import { reportsIn } from "./reports.ts";
import { chosenLibrary } from "./store/choose.ts";
import { keepStore } from "./store/sqlite/keeper.ts";
import { lookOn } from "./store/sqlite/onlooker.ts";
import { askedBy, libraryIn } from "./terminal/commandNames.ts";
import { handleCalls } from "./window/calls.ts";
import { classroomOf } from "./window/classroom.ts";
import { fileDialogs } from "./window/dialogs.ts";
import { guardContents, guardSession } from "./window/guard.ts";
import { openWindow } from "./window.ts";

const now = (): Date => new Date();
const { platform, env } = process;
const data = dataFolder({ platform, env, home: homedir() });
const { library: given, words } = libraryIn(process.argv.slice(app.isPackaged ? 1 : 2));
const choice = chosenLibrary({ given, env, data, platform });
const folder = choice.ok ? choice.value.folder : data;
const requests = noRequests();
const keeper = lookOn(choice.ok ? choice.value.keeper(now) : keepStore(data, now), now);
const reports = reportsIn(folder, app.getVersion(), now);
let window: BrowserWindow | null = null;
/** What the menu hangs on: the keys that the person gave, and what is in front in the page. */
let keys = FIRST_SETTINGS.keys;
let front: Front = "library";

// All of this comes before Electron is ready: afterwards it would be too late or would not hold for the first page.
registerScheme();
app.enableSandbox();
keepOwnFolder(join(folder, "window"));
app.on("web-contents-created", (_event, contents) => guardContents(contents));
const FAULTS = ["uncaughtException", "unhandledRejection"] as const;
for (const event of FAULTS) process.on(event, tellFault);
app.on("open-file", (event, path) => {
  event.preventDefault();
  takeFile(path);
});

const asked = askedBy(words);
const givenFile = "file" in asked && asked.file !== null ? resolve(asked.file) : null;
if ("command" in asked) void app.whenReady().then(() => runCommand(asked.command));
else if (!choice.ok) void app.whenReady().then(() => giveUp(new Error(sentence(choice.refusal))));
else if (app.requestSingleInstanceLock({ file: givenFile })) {
  if (givenFile !== null) requests.setStartFile(givenFile);
  app.on("second-instance", (_event, _words, _folder, sent) => {
    const { file } = (sent ?? {}) as { readonly file?: unknown };
    if (typeof file === "string") takeFile(file);
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
  app.on("window-all-closed", () => app.quit());
  closeLibraryLast();
  void app.whenReady().then(begin).catch(giveUp);
} else app.quit();

async function begin(): Promise<void> {
  const root = app.getAppPath();
  const isDeveloped = !app.isPackaged;
  const host: Host = {
    kind: "electron",
    version: app.getVersion(),
    keeper,
    samples: join(root, "samples"),
    printer: join(root, "out", "electron", "printer.cjs"),
    takeHome: join(root, TAKE_HOME),
    requests,
    reports,
    now,
    onSettings: (settings) => {
      keys = settings.keys;
      showMenu();
    },
    onFront: (now) => {
      front = now;
      showMenu();
    },
    classroom: classroomOf(isDeveloped, () => window),
    ...fileDialogs(keeper, () => window),
  };
  guardSession(session.defaultSession, isDeveloped);
  servePages(join(root, "out", "renderer"));
  handleCalls(host);
  const library = await keeper.library();
  const settings = library.ok ? library.value.settings : null;
  const kept = await settings?.read();
  if (kept?.ok) keys = kept.value.keys;
  showMenu();
  window = await openWindow({
    preload: join(root, "out", "electron", "preload.cjs"),
    isDeveloped,
    settings,
    now,
    lost: (fault) => requests.add({ report: reports.keepOwn(fault, "window") }),
  });
  window.once("closed", () => {
    window = null;
    host.classroom?.close();
  });
}

function showMenu(): void {
  const template = menuTemplate(process.platform, (menu) => requests.add({ menu }), keys, front);
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}

/** What Electron keeps lies with the library. Where no folder can be made it stays elsewhere, and the library says why. */
function keepOwnFolder(own: string): void {
  try {
    mkdirSync(own, { recursive: true, mode: 0o700 });
    app.setPath("userData", own);
  } catch {}
}

/** A fault of the program's own is kept as a report and told by the page; what is under way goes on, as Electron has it. */
function tellFault(fault: unknown): void {
  requests.add({ report: reports.keepOwn(fault, "program") });
}

/** A fault before there is a window would leave a program that nobody sees and nobody can end. */
function giveUp(fault: unknown): void {
  dialog.showErrorBox(WINDOW_NAMES.program, fault instanceof Error ? fault.message : String(fault));
  app.exit(1);
}

/** A file from the desktop: for the page that runs, or for the one that is about to start. */
function takeFile(path: string): void {
  if (window) requests.add({ file: path });
  else requests.setStartFile(path);
}

/** Runs one command line in place of a window: the packed program is no Node, and carries its terminal with it. */
async function runCommand(words: readonly string[]): Promise<void> {
  const load = createRequire(import.meta.url);
  const { runProcess } = load("./terminal.cjs") as typeof import("./terminal/process.ts");
  await runProcess(words);
  process.stdout.write("", () => app.exit(Number(process.exitCode ?? 0)));
}

/** Everything is in one file once the library was closed in order. */
function closeLibraryLast(): void {
  let isClosed = false;
  app.on("will-quit", (event) => {
    if (isClosed) return;
    event.preventDefault();
    void keeper.close().finally(() => {
      isClosed = true;
      for (const fault of FAULTS) process.off(fault, tellFault);
      app.quit();
    });
  });
}
