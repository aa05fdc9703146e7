import { fileURLToPath } from "node:url";
import { type Browser, chromium, type Page } from "@playwright/test";

/** Debian's own; another one is named by the environment. */
export const CHROMIUM = process.env.WIREFATHOM_CHROMIUM ?? "/usr/bin/chromium";
/** Never a GPU, so that figures of machines with one and without can be compared; root may not have a sandbox. */
export const ARGUMENTS = ["--disable-gpu", "--no-sandbox"];
/** Large enough for a bench with its side panel. */
export const WINDOW = { width: 1440, height: 900 };
const WATCH = fileURLToPath(new URL("page/watch.js", import.meta.url));

/** What `watch.js` counted since it was last asked. Layers are numbered from the lowest. */
export interface Watched {
  /** Times that React changed the page, and components it rendered for that. */
  readonly commits: number;
  readonly renders: number;
  readonly draws: readonly number[];
  /** Most draws of a layer in one frame. */
  readonly mostInAFrame: readonly number[];
}

/** A browser without a window. */
export function launch(): Promise<Browser> {
  return chromium.launch({ executablePath: CHROMIUM, args: ARGUMENTS });
}

/** A page that is watched from its first line on. */
export async function watchedPage(browser: Browser): Promise<Page> {
  const page = await browser.newPage({ viewport: WINDOW });
  page.setDefaultTimeout(300_000);
  await page.addInitScript({ path: WATCH });
  return page;
}

/** What has been counted since the last time. */
export async function take(page: Page): Promise<Watched> {
  return (await page.evaluate("watched.take()")) as Watched;
}

/** Waits until nothing has been drawn for a while; errs on the long side, since a large drawing takes its time. */
export async function still(page: Page): Promise<void> {
  await page.evaluate("watched.still()");
}
