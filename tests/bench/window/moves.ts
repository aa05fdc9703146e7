import type { Browser, Page } from "@playwright/test";
import { median } from "../measure.ts";
import { still, take, type Watched } from "./browser.ts";
import { OVER, SHEET } from "./throws.ts";
import { drawingTasks, eventsToDraws, type Traced, traced } from "./trace.ts";

/** Moves of the pointer or turns of the wheel in one gesture. */
const STEPS = 30;

/** This far from the corner of the drawing's window lies nothing, pixels. */
const BARE = 8;

/** What a gesture came to, counted from its first move to its last. */
export interface Moved extends Watched {
  /** Processor time of the frames, median, milliseconds. */
  readonly frameMs: number;
}

/** What a drag of a part came to: its moves, and all from letting it go to the frame that shows its wires laid anew. */
export interface Dragged extends Moved {
  /** Processor time, milliseconds. */
  readonly dropMs: number;
}

/** Drags the drawing with the middle button. */
export async function pan(browser: Browser, page: Page): Promise<Moved> {
  const { counted, trace } = await watched(browser, page, await barePaper(page), {
    begin: () => page.mouse.down({ button: "middle" }),
    step: (x, y, number) => page.mouse.move(x + 6 * number, y + 2 * number),
    end: () => page.mouse.up({ button: "middle" }),
  });
  return { ...counted, frameMs: median(drawingTasks(trace, SHEET)) };
}

/** Turns the wheel over the drawing: in, and out again. */
export async function zoom(browser: Browser, page: Page): Promise<Moved> {
  const { counted, trace } = await watched(browser, page, await barePaper(page), {
    begin: async () => {},
    step: (_x, _y, number) => page.mouse.wheel(0, number <= STEPS / 2 ? -40 : 40),
    end: async () => {},
  });
  return { ...counted, frameMs: median(drawingTasks(trace, SHEET)) };
}

/** Drags a part with its wires: the drawing itself stands still meanwhile, or the hand has missed. */
export async function drag(browser: Browser, page: Page, part: string): Promise<Dragged> {
  const { counted, trace } = await watched(browser, page, await placeOf(page, part), {
    begin: () => page.mouse.down(),
    step: (x, y, number) => page.mouse.move(x + 3 * number, y + number),
    end: () => page.mouse.up(),
  });
  const [drop] = eventsToDraws(trace, "pointerup", SHEET);
  if ((counted.draws[SHEET] ?? 0) > 2) throw new Error("the drawing moved with the hand instead of the part");
  if (!drop) throw new Error("the drawing was not made anew where the part was put down");
  return { ...counted, frameMs: median(drawingTasks(trace, OVER)), dropMs: drop.ownMs };
}

type Place = readonly [x: number, y: number];

/** Bare paper: nothing to point at, and so no card to open or close on the way. */
async function barePaper(page: Page): Promise<Place> {
  const box = (await page.locator(".sheet-canvas").boundingBox())!;
  return [box.x + BARE, box.y + BARE];
}

/**
 * Where a part is on the screen at 100 %, where a hand can take it, found as a person finds it: by the search, and by the menu that
 * opens at it.
 */
async function placeOf(page: Page, part: string): Promise<Place> {
  await page.keyboard.press("Control+0");
  await still(page);
  await page.keyboard.press("Control+f");
  await page.keyboard.type(part);
  await page.keyboard.press("Enter");
  await still(page);
  await page.keyboard.press("Shift+F10");
  const menu = (await page.getByRole("dialog", { name: `What can be done with ${part}` }).boundingBox())!;
  await page.keyboard.press("Escape");
  return [menu.x, menu.y];
}

interface Gesture {
  begin(): Promise<void>;
  step(x: number, y: number, number: number): Promise<void>;
  end(): Promise<void>;
}

async function watched(
  browser: Browser,
  page: Page,
  [x, y]: Place,
  { begin, step, end }: Gesture,
): Promise<{ readonly counted: Watched; readonly trace: Traced }> {
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
  return { counted: counted!, trace };
}
