import type { Browser, Page } from "@playwright/test";
import { median } from "../measure.ts";
import { still, take, type Watched } from "./browser.ts";
import { type ClickToDraw, clicksToDraws, traced } from "./trace.ts";

/** Clicks before any is counted: at least so many, for at least so long. */
const WARM_TIMES = 4;
const WARM_MS = 250;
const TIMES = 10;
/** A finger's click: down and up. */
const FINGER_MS = 80;
/** The drawing's layer of the bench: printed pages and halos lie under it, what a hand carries, flags and turning blades over it. */
export const SHEET = 2;
export const OVER = 3;

/** What one click came to: medians. */
export interface Clicked extends ClickToDraw, Watched {}

/** Throws a control of the strip to and fro by real clicks. */
export async function throwInStrip(browser: Browser, page: Page, control: string): Promise<Clicked> {
  const row = page.locator(".control").filter({ has: page.locator(`b:text-is("${control}")`) });
  const positions = ["on", "off"].map((name) => row.locator(`[data-position="${name}"]`));
  return clicked(browser, page, SHEET, async (turn) => positions[turn % 2]!.hover());
}

/** Clicks on the one button of the bare page. */
export async function redrawBare(browser: Browser, page: Page): Promise<Clicked> {
  return clicked(browser, page, 0, () => page.hover("#redraw"));
}

async function clicked(
  browser: Browser,
  page: Page,
  layer: number,
  aim: (turn: number) => Promise<void>,
): Promise<Clicked> {
  const seen: Watched[] = [];
  const click = async (turn: number): Promise<void> => {
    await aim(turn);
    await still(page);
    await take(page);
    await page.mouse.down();
    await page.waitForTimeout(FINGER_MS);
    await page.mouse.up();
    await page.waitForTimeout(FINGER_MS);
    await still(page);
    seen.push(await take(page));
  };
  const begun = performance.now();
  let turn = 0;
  while (turn < WARM_TIMES || performance.now() - begun < WARM_MS || turn % 2 === 1) await click(turn++);
  seen.length = 0;
  const trace = await traced(browser, page, async () => {
    for (const end = turn + TIMES; turn < end; turn++) await click(turn);
  });
  const drawn = clicksToDraws(trace, layer);
  if (drawn.length !== TIMES) throw new Error(`${TIMES} clicks, but the trace shows ${drawn.length} drawn`);
  return {
    ownMs: median(drawn.map(({ ownMs }) => ownMs)),
    wallMs: median(drawn.map(({ wallMs }) => wallMs)),
    commits: median(seen.map(({ commits }) => commits)),
    renders: median(seen.map(({ renders }) => renders)),
    draws: layersOf(seen.map(({ draws }) => draws)),
    mostInAFrame: layersOf(seen.map(({ mostInAFrame }) => mostInAFrame)),
  };
}

/** Medians of each layer; a layer that was not drawn has a hole in the list. */
function layersOf(rows: readonly (readonly (number | null)[])[]): readonly number[] {
  const layers = Math.max(...rows.map(({ length }) => length));
  return Array.from({ length: layers }, (_, layer) => median(rows.map((row) => row[layer] ?? 0)));
}
