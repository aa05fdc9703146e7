import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "@playwright/test";
import { launch, still, watchedPage } from "./browser.ts";
import { gridCircuit } from "./gridCircuit.ts";
import { freshFolder, startHost } from "./host.ts";

const PARTS = 5_000;

/** What a circuit of 5,000 parts came to in the page. */
export interface Large {
  readonly parts: number;
  /** By the clock, from asking for the page to the drawing on it. */
  readonly openMs: number;
  /** Processor time of the page's process until then, all its threads. */
  readonly openCpuMs: number;
  /** What the page's process then holds, garbage collected, its share of what it has in common with others counted in, megabytes. */
  readonly megabytes: number;
}

/** Opens a circuit of 5,000 parts on one page in a browser of its own. */
export async function openLarge(): Promise<Large> {
  const circuit = gridCircuit(PARTS);
  const folder = freshFolder();
  const file = join(folder.path, "large.circuit.json");
  writeFileSync(file, JSON.stringify(circuit));
  const host = await startHost(file);
  const browser = await launch();
  try {
    const page = await watchedPage(browser);
    const begun = performance.now();
    await page.goto(host.address);
    await page.locator(".sheet-canvas").boundingBox();
    await page.evaluate("new Promise(requestAnimationFrame)");
    const openMs = performance.now() - begun;
    const openCpuMs = (await pageProcess(browser)).cpuTime * 1_000;
    await still(page);
    await (await page.context().newCDPSession(page)).send("HeapProfiler.collectGarbage");
    const { id } = await pageProcess(browser);
    return { parts: circuit.parts.length, openMs, openCpuMs, megabytes: megabytesOf(id) };
  } finally {
    await browser.close();
    await host.stop();
    folder.remove();
  }
}

/** The process of the page: of those that show pages, the one that has worked most. */
async function pageProcess(browser: Browser): Promise<{ readonly id: number; readonly cpuTime: number }> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send("SystemInfo.getProcessInfo");
  await session.detach();
  const pages = processInfo.filter(({ type }) => type === "renderer");
  return pages.toSorted((one, other) => other.cpuTime - one.cpuTime)[0]!;
}

/** Proportional set size of a process as Linux tells it (proc_pid_smaps(5)). */
function megabytesOf(pid: number): number {
  const [, kilobytes] = /^Pss: +(\d+) kB$/m.exec(readFileSync(`/proc/${pid}/smaps_rollup`, "utf8"))!;
  return Number(kilobytes) / 1_024;
}
