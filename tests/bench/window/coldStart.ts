import { spawn } from "node:child_process";
import { once } from "node:events";
import { chromium, type Page } from "@playwright/test";
import { median } from "../measure.ts";
import { freshFolder } from "../room.ts";
import { ARGUMENTS, CHROMIUM, WINDOW } from "./browser.ts";
import { startHost } from "./host.ts";

const TIMES = 5;
/** A browser that is still there so long after it was closed, or failed, is ended. */
const CLOSE_MS = 3_000;

/** Medians in milliseconds, each from a start of its own. */
export interface ColdStart {
  /** From the start of Chromium to the first paint of an empty page that is served already. */
  readonly emptyMs: number;
  /** From the start of our host on a new library, until it serves. */
  readonly hostMs: number;
  /** From the start of our host to the first paint of the first-start screen, host and Chromium one after the other. */
  readonly firstPaintMs: number;
}

/** Starts both in turn. The disk is warm: files were read before, and Chromium has its profile. */
export async function coldStart(emptyAddress: string): Promise<ColdStart> {
  const profile = freshFolder();
  const rows: ColdStart[] = [];
  try {
    for (let time = -1; time < TIMES; time++) {
      const emptyMs = await paintOf(emptyAddress, profile.path, now(), "Empty");
      const begun = now();
      const host = await startHost();
      const hostMs = now() - begun;
      const firstPaintMs = await paintOf(host.address, profile.path, begun, "See where every wire").finally(host.stop);
      // The first time warms the disk.
      if (time >= 0) rows.push({ emptyMs, hostMs, firstPaintMs });
    }
  } finally {
    profile.remove();
  }
  return {
    emptyMs: median(rows.map(({ emptyMs }) => emptyMs)),
    hostMs: median(rows.map(({ hostMs }) => hostMs)),
    firstPaintMs: median(rows.map(({ firstPaintMs }) => firstPaintMs)),
  };
}

/** Milliseconds since the epoch, as the page's own clock has them. */
function now(): number {
  return performance.timeOrigin + performance.now();
}

/** Opens a page as a person's start does, by a new Chromium with its address; milliseconds from `begun` to its first paint. */
async function paintOf(address: string, profile: string, begun: number, words: string): Promise<number> {
  const size = `--window-size=${WINDOW.width},${WINDOW.height}`;
  const own = ["--headless", "--remote-debugging-port=0", "--no-first-run", `--user-data-dir=${profile}`, size];
  const child = spawn(CHROMIUM, [...ARGUMENTS, ...own, address], { stdio: ["ignore", "ignore", "pipe"] });
  let said = "";
  const debugged = new Promise<string>((found) => {
    child.stderr.on("data", (piece) => {
      said += piece;
      const port = /DevTools listening on (ws:\S+)\s/.exec(said)?.[1];
      if (port) found(port);
    });
  });
  const ended = once(child, "exit");
  try {
    const browser = await chromium.connectOverCDP(await debugged);
    const page = browser.contexts()[0]!.pages()[0]!;
    // The page must be the one that is meant: its address changes on the way to it.
    await page.getByText(words).first().waitFor();
    const painted = await firstPaint(page);
    await (await browser.newBrowserCDPSession()).send("Browser.close");
    return painted - begun;
  } finally {
    // What was closed as a person closes it keeps its profile whole; this is for one that failed.
    const late = setTimeout(() => child.kill(), CLOSE_MS);
    await ended;
    clearTimeout(late);
  }
}

/** When the page first painted something, in milliseconds since the epoch. */
async function firstPaint(page: Page): Promise<number> {
  return (await page.evaluate(`new Promise((found) => {
    new PerformanceObserver((list) => {
      const paint = list.getEntriesByName("first-contentful-paint")[0];
      if (paint) found(performance.timeOrigin + paint.startTime);
    }).observe({ type: "paint", buffered: true });
  })`)) as number;
}
