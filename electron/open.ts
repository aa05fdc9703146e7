import { spawn } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { homedir } from "node:os";
import { join, resolve } from "node:path";
import type { Outcome } from "../core/base/outcome.ts";
import { START_NAMES as WORDS } from "../core/base/words/window.ts";
import { readExercise } from "../schemas/exercise.ts";
import { isBuilt } from "./build.ts";
import { dataFolder } from "./dataFolder.ts";
import { isExerciseFile } from "./exerciseFile.ts";
import { readBytes, readCircuitFile } from "./files.ts";
import { openBrowser } from "./launch/browser.ts";
import { canShowWindow, electronProgram, fetchElectron, hasScreen, noteMissed, wasMissed } from "./launch/electron.ts";
import { addressOfRunning } from "./loopback/running.ts";
import { beginSession } from "./loopback/session.ts";
import { TAKE_HOME } from "./print/takeHome.ts";
import { ROOT } from "./root.ts";
import { chosenLibrary, type LibraryChoice } from "./store/choose.ts";
import { EXIT } from "./terminal/console.ts";

/** Longest that a start waits for Electron to be fetched, in seconds. */
const FETCH_SECONDS = 20;
/** An Electron that ends badly within so many milliseconds never showed a window. */
const FAILED_START_MS = 8_000;

/** Where a start writes. */
export interface StartConsole {
  write(text: string): void;
  complain(text: string): void;
}

/**
 * Opens the window and comes back when it was closed: Electron where it is there or can be fetched in time, else the page
 * in a browser. `library` is a connection string given with the command. Refuses a file that is no circuit and no exercise, and a
 * library that cannot be meant, before anything is opened.
 */
export async function open(
  file: string | null,
  console: StartConsole,
  library: string | null = null,
): Promise<Outcome<number>> {
  const path = file === null ? null : resolve(file);
  if (path !== null) {
    const read = await readOpenable(path);
    if (!read.ok) return read;
  }
  const { platform, env } = process;
  const data = dataFolder({ platform, env, home: homedir() });
  const choice = chosenLibrary({ given: library, env, data, platform });
  if (!choice.ok) return choice;
  const served = await addressOfRunning(choice.value.folder, path);
  if (served !== null) return { ok: true, value: hand(served, console) };
  if (!isBuilt(ROOT)) await buildFirst(console);
  // Without a page there is nothing to show; why was told by the builder.
  if (!existsSync(join(ROOT, "out", "renderer", "index.html"))) return { ok: true, value: EXIT.ownFault };
  if (canShowWindow({ platform, env }, process.getuid?.() === 0)) {
    const code = await openElectron(data, choice.value, path, console);
    if (code !== null) return { ok: true, value: code };
  }
  return { ok: true, value: await openInBrowser(choice.value, path, console) };
}

/** Reads a file that a window can begin with, as its name says what it is. */
async function readOpenable(path: string): Promise<Outcome<unknown>> {
  if (!isExerciseFile(path)) return readCircuitFile(path);
  const bytes = await readBytes(path);
  return bytes.ok ? readExercise(bytes.value) : bytes;
}

/** Tells the address of a Wirefathom that runs already, and opens it. */
function hand(address: string, console: StartConsole): number {
  console.write(`${WORDS.running.replace("{address}", address)}\n`);
  if (hasScreen(process)) openBrowser(process.platform, address);
  return 0;
}

/** What cannot be built is told, and what was built before is shown. */
async function buildFirst(console: StartConsole): Promise<void> {
  console.write(`${WORDS.building}\n`);
  const child = spawn(process.execPath, [join(ROOT, "electron", "runBuild.ts")], {
    stdio: ["ignore", "ignore", "pipe"],
  });
  let said = "";
  child.stderr.on("data", (piece) => {
    said += piece;
  });
  const code = await new Promise((ended) => child.once("close", ended));
  if (code !== 0) console.complain(`${WORDS.notBuilt}\n${said}`);
}

/** The exit code of Electron once its window was closed, or null where it is not there or never came up. */
async function openElectron(
  data: string,
  { address }: LibraryChoice,
  file: string | null,
  console: StartConsole,
): Promise<number | null> {
  const program = await programOrFetched(data, console);
  if (program === null) return null;
  const began = Date.now();
  const child = spawn(program, [ROOT, ...(file === null ? [] : [file])], {
    stdio: "ignore",
    // Set in some editors' terminals; Electron would then be no more than Node.
    env: {
      ...process.env,
      ELECTRON_RUN_AS_NODE: undefined,
      // Not as words of its command, which others on the machine could read.
      ...(address !== null && { WIREFATHOM_LIBRARY: address }),
    },
  });
  const code = await new Promise<number>((ended) => {
    child.once("error", () => ended(1));
    child.once("exit", (status) => ended(status ?? 1));
  });
  if (code === 0 || Date.now() - began > FAILED_START_MS) return code;
  console.write(`${WORDS.notStarted}\n`);
  return null;
}

async function programOrFetched(folder: string, console: StartConsole): Promise<string | null> {
  const there = electronProgram(ROOT, process.env);
  if (there !== null || wasMissed(folder, new Date())) return there;
  console.write(`${WORDS.fetching.replace("{seconds}", String(FETCH_SECONDS))}\n`);
  const program = (await fetchElectron(ROOT, FETCH_SECONDS)) ? electronProgram(ROOT, process.env) : null;
  noteMissed(folder, program === null ? new Date() : null);
  if (program === null) console.write(`${WORDS.notFetched}\n`);
  return program;
}

async function openInBrowser(
  { folder, keeper }: LibraryChoice,
  file: string | null,
  console: StartConsole,
): Promise<number> {
  const { version } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8")) as { readonly version: string };
  const now = (): Date => new Date();
  const session = await beginSession({
    folder,
    keeper: keeper(now),
    pages: join(ROOT, "out", "renderer"),
    samples: join(ROOT, "samples"),
    printer: join(ROOT, "out", "electron", "printer.cjs"),
    takeHome: join(ROOT, TAKE_HOME),
    version,
    file,
    now,
    fault: (error, report) => {
      const said = error instanceof Error ? error.message : String(error);
      const lies = report === null ? "" : ` ${WORDS.report.replace("{file}", report)}`;
      console.complain(`Wirefathom met a fault of its own: ${said}.${lies}\n`);
    },
    refused: (line) => console.complain(line),
  });
  if (!session.isOwner) return hand(session.address, console);
  console.write(`${WORDS.address.replace("{address}", session.address)}\n`);
  if (hasScreen(process)) openBrowser(process.platform, session.address);
  await new Promise<void>((ended) => {
    for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const) process.once(signal, () => ended());
  });
  await session.close();
  return 0;
}
