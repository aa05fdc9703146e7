import { readFileSync } from "node:fs";
import type { Browser } from "@playwright/test";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import { addCircuit } from "../../../electron/store/sqlite/circuits.ts";
import { closeStore, openStore } from "../../../electron/store/sqlite/open.ts";
import { median } from "../measure.ts";
import { freshFolder } from "../room.ts";
import { launch, watchedPage } from "./browser.ts";
import { gridCircuit } from "./gridCircuit.ts";
import { startHostOn } from "./host.ts";
import { parsedAndDrawn, toFirstInk } from "./opening.ts";

const PARTS = 5_000;
const TIMES = 3;
/** The worker of the library's small pictures is let go some seconds after its last, and other workers collect theirs when they rest. */
const LOOKS = 10;
const LOOK_MS = 3_000;
const NOW = new Date("2026-03-02T08:00:00Z");

/** What a circuit of 5,000 parts came to in the page: medians of browsers that had opened nothing before. */
export interface Large {
  readonly parts: number;
  /** By the clock, from the click in the library to the first picture: all parts, wires, names and tags of the page. */
  readonly openMs: number;
  /** Processor time of the page's main thread until then. */
  readonly openOwnMs: number;
  /** Parsing the circuit's JSON and drawing the same marks once, in a page that does nothing else: by the clock, and its own. */
  readonly onceMs: number;
  readonly onceOwnMs: number;
  /**
   * The least that the page's process holds in the half minute after, garbage collected, its share of what it has in common with
   * others counted in, megabytes.
   */
  readonly megabytes: number;
}

/** Opens a circuit of 5,000 parts on one page from the library, and has its marks drawn once, by turns; `once` is the plain page. */
export async function openLarge(once: string): Promise<Large> {
  const circuit = gridCircuit(PARTS);
  const rows: Omit<Large, "parts">[] = [];
  for (let time = 0; time < TIMES; time++) {
    const { wallMs: onceMs, ownMs: onceOwnMs } = await parsedAndDrawn(once, circuit);
    rows.push({ ...(await opened(circuit)), onceMs, onceOwnMs });
  }
  const of = (name: keyof (typeof rows)[number]): number => median(rows.map((row) => row[name]));
  return {
    parts: circuit.parts.length,
    openMs: of("openMs"),
    openOwnMs: of("openOwnMs"),
    onceMs: of("onceMs"),
    onceOwnMs: of("onceOwnMs"),
    megabytes: of("megabytes"),
  };
}

/** Puts a circuit into a new library. */
async function keep(circuit: Circuit, folder: string): Promise<void> {
  const opened = await openStore(folder, NOW);
  if (!opened.ok) throw new Error(opened.refusal.code);
  addCircuit(opened.value, circuit, { name: "made" }, NOW);
  closeStore(opened.value);
}

/** From a library of its own: one that was left with a circuit open comes back with it. */
async function opened(circuit: Circuit): Promise<Pick<Large, "openMs" | "openOwnMs" | "megabytes">> {
  const folder = freshFolder();
  await keep(circuit, folder.path);
  const host = await startHostOn(folder.path);
  const browser = await launch();
  try {
    const page = await watchedPage(browser);
    await page.goto(host.address);
    // The library draws its small picture first: that is not what is measured.
    await page.locator(".entry .picture svg").waitFor({ state: "attached" });
    const { wallMs: openMs, ownMs: openOwnMs } = await toFirstInk(browser, page, ".entry-open");
    const looks: number[] = [];
    for (let look = 0; look < LOOKS; look++) {
      await page.waitForTimeout(LOOK_MS);
      await (await page.context().newCDPSession(page)).send("HeapProfiler.collectGarbage");
      looks.push(megabytesOf(await pageProcess(browser)));
    }
    return { openMs, openOwnMs, megabytes: Math.min(...looks) };
  } finally {
    await browser.close();
    await host.stop();
    folder.remove();
  }
}

/** Number of the process of the page: of those that show pages, the one that has worked most. */
async function pageProcess(browser: Browser): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send("SystemInfo.getProcessInfo");
  await session.detach();
  const pages = processInfo.filter(({ type }) => type === "renderer");
  return pages.toSorted((one, other) => other.cpuTime - one.cpuTime)[0]!.id;
}

/** Proportional set size of a process as Linux tells it (proc_pid_smaps(5)). */
function megabytesOf(pid: number): number {
  const [, kilobytes] = /^Pss: +(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/smaps_rollup`, "utf8"))!;
  return Number(kilobytes) / 1_024;
}
