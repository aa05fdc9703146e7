import type { Page } from "@playwright/test";
import { openSample, positionOf, throwTo } from "./acts.ts";
import { expect, story } from "./story.ts";

/** What is promised: an edit is on the disk within a second. Asserted at three times that, for other programs run meanwhile. */
const PROMISED_MS = 1_000;
const ASSERTED_MS = 3 * PROMISED_MS;
const EDITS = 7;

/** Milliseconds from a throw in the page to the moment at which the host says that it was kept; both by this machine's clock. */
async function keptAfter(page: Page, position: string): Promise<number> {
  const answered = page.waitForResponse((response) => /\/call\/(benches|circuits)\.save$/.test(response.url()));
  await page.evaluate(() => {
    const note = () => Object.assign(window, { clickedAt: Date.now() });
    window.addEventListener("pointerdown", note, { capture: true, once: true });
  });
  await throwTo(page, "S1", position);
  const { value } = await (await answered).json();
  const clicked = (await page.evaluate("clickedAt")) as number;
  return Date.parse(value.saved) - clicked;
}

story("an edit is on the disk within a second of the hand", async ({ program }) => {
  const { page } = program;
  await openSample(page, "Roof vents");
  // The first edit of a sample makes it a circuit of its own.
  await throwTo(page, "S1", "on");
  await page.waitForTimeout(PROMISED_MS);
  const spent: number[] = [];
  for (let edit = 0; edit < EDITS; edit++) {
    spent.push(await keptAfter(page, edit % 2 === 0 ? "off" : "on"));
    await page.waitForTimeout(200);
  }
  const median = spent.toSorted((a, b) => a - b)[EDITS >> 1]!;
  console.log(`kept after ${median} ms (${Math.min(...spent)} to ${Math.max(...spent)})`);
  expect(median).toBeGreaterThan(0);
  expect(Math.max(...spent)).toBeLessThan(ASSERTED_MS);
});

story("a tab that crashed is the same bench again, with all that can be undone", async ({ program, context }) => {
  const { page } = program;
  const address = new URL("/", page.url()).href;
  await openSample(page, "Roof vents");
  await throwTo(page, "S1", "on");
  const undo = page.getByRole("button", { name: /^Undo: / });
  const named = await undo.getAttribute("aria-label");
  await page.waitForTimeout(PROMISED_MS);
  const crashed = page.waitForEvent("crash");
  const session = await context.newCDPSession(page);
  session.send("Page.crash").catch(() => {});
  await crashed;

  const again = await context.newPage();
  const begun = performance.now();
  await again.goto(address);
  await expect(positionOf(again, "S1", "on")).toHaveAttribute("aria-pressed", "true");
  const ms = Math.round(performance.now() - begun);
  console.log(`the same bench ${ms} ms after the crash`);
  expect(ms).toBeLessThan(3 * 3_000);
  await expect(again.getByRole("button", { name: named ?? "", exact: true })).toBeVisible();
  await again.getByRole("application").focus();
  await again.keyboard.press("Control+z");
  await expect(positionOf(again, "S1", "off")).toHaveAttribute("aria-pressed", "true");
  await again.close();
});
