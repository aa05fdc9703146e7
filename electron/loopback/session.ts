import { setTimeout as wait } from "node:timers/promises";
import { ok, type Refusal } from "../../core/base/outcome.ts";
import type { Host } from "../answers/host.ts";
import { noRequests } from "../answers/requests.ts";
import { startLoopback } from "../loopback.ts";
import { reportsIn } from "../reports.ts";
import type { LibraryKeeper } from "../store/library.ts";
import { keepStore } from "../store/sqlite/keeper.ts";
import { lookOn } from "../store/sqlite/onlooker.ts";
import { addressOfRunning, removeLock, writeLock } from "./running.ts";

/** What a browser is served from. */
export interface SessionWish {
  /** Folder of the library, or of this machine's part of a shared one. */
  readonly folder: string;
  /** The library; absent for the one in the folder. */
  readonly keeper?: LibraryKeeper;
  /** Folder of the built page. */
  readonly pages: string;
  readonly samples: string;
  readonly printer: URL | string;
  readonly takeHome: string;
  readonly version: string;
  /** A circuit file to open, by its whole path. */
  readonly file: string | null;
  now(): Date;
  /** Told what goes wrong inside, and where its report lies; null where none could be written. */
  fault(error: unknown, report: string | null): void;
  /** Told in a line what a stranger was refused. */
  refused(line: string): void;
}

/** A library that is served to a browser. */
export interface Session {
  /** Lets one browser in, once. */
  readonly address: string;
  /** False where another process serves it already and only gave an address. */
  readonly isOwner: boolean;
  close(): Promise<void>;
}

/** How often, and how long apart in ms, another owner of the library is looked for before the page tells of it. */
const LOOKS = 4;
const LOOK_MS = 500;

/**
 * Serves a library to a browser, or asks the process that serves it already for an address. Where neither can be, as when
 * the program's own window has the library, the page shows it as it stands there, and keeps nothing.
 */
export async function beginSession(wish: SessionWish): Promise<Session> {
  const running = await addressOfRunning(wish.folder, wish.file);
  if (running !== null) return guest(running);
  const keeper = wish.keeper ?? keepStore(wish.folder, wish.now);
  for (let look = 0; look < LOOKS; look++) {
    const library = await keeper.library();
    if (library.ok || !isHeld(library.refusal)) break;
    // Two starts at once: the other has the library and is about to say where it serves it.
    await wait(LOOK_MS);
    const other = await addressOfRunning(wish.folder, wish.file);
    if (other !== null) return guest(other);
  }
  /** Where this process has the library, others are told where it is served; one that cannot be told only looks on. */
  const tellOthers = async (): Promise<void> => {
    await writeLock(wish.folder, { pid: process.pid, port: loopback.port, key: loopback.key });
  };
  const shown = lookOn(keeper, wish.now, tellOthers);
  const requests = noRequests();
  const reports = reportsIn(wish.folder, wish.version, wish.now);
  if (wish.file !== null) requests.setStartFile(wish.file);
  const host: Host = {
    kind: "loopback",
    version: wish.version,
    keeper: shown,
    samples: wish.samples,
    printer: wish.printer,
    takeHome: wish.takeHome,
    requests,
    reports,
    now: wish.now,
    saveFile: async () => ok({ done: "download" }),
    chooseFile: async () => ok({ done: "choose" }),
  };
  const fault = (error: unknown): void => wish.fault(error, reports.keepOwn(error, "program").file);
  const loopback = await startLoopback(host, wish.pages, fault, { refused: wish.refused });
  // What ends the process is written down before it does.
  const last = (error: unknown): void => void reports.keepOwn(error, "program");
  process.on("uncaughtExceptionMonitor", last);
  if ((await keeper.library()).ok) await tellOthers();
  return {
    address: loopback.newAddress(),
    isOwner: true,
    close: async () => {
      process.off("uncaughtExceptionMonitor", last);
      removeLock(wish.folder);
      await loopback.close();
      await shown.close();
    },
  };
}

function guest(address: string): Session {
  return { address, isOwner: false, close: async () => {} };
}

function isHeld({ code }: Refusal): boolean {
  return code === "store-locked";
}
