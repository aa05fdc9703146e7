import type { Page } from "@playwright/test";
import type { Lots } from "../lots.ts";
import { place } from "../window/byKeys.ts";
import { VIEWS } from "../window/everyView.ts";
import { openView } from "../window/views.ts";

/** Views that a round looks at, two in a round. */
const LOOKED_AT = VIEWS.filter((view) => view !== "Probe order");
const VIEWS_A_ROUND = 2;
const THROWS_A_ROUND = 4;
/** A round prints one time in so many. */
const PRINTS = 3;
const SHOWS = 4;
/** Edits of a round are far fewer. */
const MOST_UNDONE = 80;

/** What a person did in some rounds, counted. */
export interface Done {
  opened: number;
  thrown: number;
  edited: number;
  undone: number;
  printed: number;
  looked: number;
  shown: number;
}

/** Nothing done yet. */
export function nothingDone(): Done {
  return { opened: 0, thrown: 0, edited: 0, undone: 0, printed: 0, looked: 0, shown: 0 };
}

/**
 * A while of somebody's work on a circuit of the library, from the library and back to it: opened, thrown, looked at, a part
 * and a fault put in, a complaint chosen, printed, shown to a class, and all undone, so that the library is as it was.
 */
export async function workedRound(page: Page, number: number, lots: Lots, done: Done): Promise<void> {
  const entries = page.locator(".entry-open:not(.is-job)");
  await entries.nth(number % (await entries.count())).click();
  await page.getByRole("application").waitFor();
  done.opened += 1;
  for (let times = 0; times < THROWS_A_ROUND; times++) await throwOne(page, lots, done);
  await drawn(page, done);
  await complained(page, done);
  for (let times = 0; times < VIEWS_A_ROUND; times++) {
    await openView(page, LOOKED_AT[(number * VIEWS_A_ROUND + times) % LOOKED_AT.length]!);
    await moved(page);
    done.looked += 1;
  }
  if (number % PRINTS === 0) await printed(page, done);
  if (number % SHOWS === 0) await shown(page, done);
  await undoneAll(page, done);
  await openView(page, "Probe order");
  await page.keyboard.press("Control+w");
  await entries.first().waitFor();
}

/** A position of the strip that is not the present one. */
async function throwOne(page: Page, lots: Lots, done: Done): Promise<void> {
  const free = page.getByRole("region", { name: "Controls" }).locator('[data-position][aria-pressed="false"]:visible');
  const count = await free.count();
  if (count === 0) return;
  await free.nth(lots.upTo(count)).click();
  done.thrown += 1;
}

/** A part from the catalogue, and a fault by the drawing's keys. */
async function drawn(page: Page, done: Done): Promise<void> {
  await place(page, "lamp", 4, 4);
  await page.getByRole("application").focus();
  await page.keyboard.press("Escape");
  done.edited += 1;
}

/** A complaint, and the probe order that a worker finds for it. */
async function complained(page: Page, done: Done): Promise<void> {
  await openView(page, "Probe order");
  await page.locator(".choices .menu-item").first().click();
  await page.locator(".step").first().waitFor({ timeout: 60_000 });
  done.edited += 1;
}

/** The drawing is moved and zoomed, in and out alike. */
async function moved(page: Page): Promise<void> {
  const box = (await page.getByRole("application").boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  for (const turn of [-120, -120, 120, 120]) await page.mouse.wheel(0, turn);
}

async function printed(page: Page, done: Done): Promise<void> {
  await page.keyboard.press("Control+p");
  const dialog = page.getByRole("dialog", { name: "Print" });
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 60_000 }),
    dialog.getByRole("button", { name: "Save as PDF" }).click(),
  ]);
  await download.delete();
  if (await dialog.isVisible()) await page.keyboard.press("Escape");
  await dialog.waitFor({ state: "hidden" });
  done.printed += 1;
}

/** The wall of a class over the whole window, and back. */
async function shown(page: Page, done: Done): Promise<void> {
  await openView(page, "Class");
  await page.keyboard.press("F5");
  await page.locator(".wall-sheet svg").waitFor();
  await page.keyboard.press("Escape");
  await page.locator(".wall-sheet svg").waitFor({ state: "detached" });
  done.shown += 1;
}

async function undoneAll(page: Page, done: Done): Promise<void> {
  const atRest = page.getByRole("button", { name: "Undo: nothing" });
  await page.getByRole("application").focus();
  for (let times = 0; times < MOST_UNDONE; times++) {
    if (await atRest.isVisible()) return;
    await page.keyboard.press("Control+z");
    done.undone += 1;
  }
  throw new Error(`more than ${MOST_UNDONE} steps were there to undo`);
}
