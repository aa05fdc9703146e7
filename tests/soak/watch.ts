import type { CDPSession, Page } from "@playwright/test";

/** What the page holds at a moment, after a forced collection. */
export interface PageHolds {
  /** Living objects, MB. */
  readonly heapMb: number;
  readonly nodes: number;
  readonly listeners: number;
  readonly documents: number;
  readonly workers: number;
}

/** Collections before the page is looked at: what hangs on something that goes with the first one goes with the next. */
const COLLECTIONS = 3;

/** Looks at a page from outside, by its debugger. */
export async function watchPage(page: Page): Promise<() => Promise<PageHolds>> {
  const session = await page.context().newCDPSession(page);
  await session.send("HeapProfiler.enable");
  return async () => {
    for (let time = 0; time < COLLECTIONS; time++) await session.send("HeapProfiler.collectGarbage");
    const { nodes, documents, jsEventListeners: listeners } = await session.send("Memory.getDOMCounters");
    return { heapMb: await heapOf(session), nodes, listeners, documents, workers: page.workers().length };
  };
}

async function heapOf(session: CDPSession): Promise<number> {
  const { usedSize } = await session.send("Runtime.getHeapUsage");
  return usedSize / 1e6;
}
