import type { Browser, Page } from "@playwright/test";
import { median } from "../measure.ts";
import { still, take, type Watched } from "./browser.ts";
import { SHEET } from "./throws.ts";
import { drawingTasks, traced } from "./trace.ts";

/** Moves of the pointer or turns of the wheel in one gesture. */
const STEPS = 30;

/** This far from the corner of the drawing's window lies nothing, pixels. */
const BARE = 8;

/** What a gesture came to, counted from its first move to its last. */
export interface Moved extends Watched {
  /** Processor time of the frames, median, milliseconds. */
  readonly frameMs: number;
}

/** Drags the drawing with the middle button. */
export function pan(browser: Browser, page: Page): Promise<Moved> {
  return moved(browser, page, {
    begin: () => page.mouse.down({ button: "middle" }),
    step: (x, y, number) => page.mouse.move(x + 6 * number, y + 2 * number),
    end: () => page.mouse.up({ button: "middle" }),
  });
}

/** Turns the wheel over the drawing: in, and out again. */
export function zoom(browser: Browser, page: Page): Promise<Moved> {
  return moved(browser, page, {
    begin: async () => {},
    step: (_x, _y, number) => page.mouse.wheel(0, number <= STEPS / 2 ? -40 : 40),
    end: async () => {},
  });
}

interface Gesture {
  begin(): Promise<void>;
  step(x: number, y: number, number: number): Promise<void>;
  end(): Promise<void>;
}

async function moved(browser: Browser, page: Page, { begin, step, end }: Gesture): Promise<Moved> {
  const box = (await page.locator(".sheet-canvas").boundingBox())!;
  // Bare paper: nothing to point at, and so no card to open or close on the way.
  const [x, y] = [box.x + BARE, box.y + BARE];
  await page.mouse.move(x, y);
  await still(page);
  let counted: Watched | null = null;
  const trace = await traced(browser, page, async () => {
    await begin();
    await take(page);
    // Chromium answers a move once its frame has begun; a longer wait between two would be a pause of the hand.
    for (let number = 1; number <= STEPS; number++) await step(x, y, number);
    counted = await take(page);
    await end();
    await still(page);
  });
  return { ...counted!, frameMs: median(drawingTasks(trace, SHEET)) };
}
