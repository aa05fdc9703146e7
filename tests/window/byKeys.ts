import type { Page } from "@playwright/test";
import { lotsOf } from "../lots.ts";

/** Takes a kind from the catalogue by keys, steps with it from the middle of the drawing, and places it there. */
export async function place(page: Page, word: string, right: number, down: number): Promise<void> {
  await page.getByRole("button", { name: "Add a part" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("searchbox", { name: /Find a part/ }).fill(word);
  await page.keyboard.press("Enter");
  const step = async (key: string, count: number): Promise<void> => {
    for (let tens = 0; tens < Math.floor(count / 10); tens++) await page.keyboard.press(`Shift+${key}`);
    for (let ones = 0; ones < count % 10; ones++) await page.keyboard.press(key);
  };
  await step(right < 0 ? "ArrowLeft" : "ArrowRight", Math.abs(right));
  await step(down < 0 ? "ArrowUp" : "ArrowDown", Math.abs(down));
  await page.keyboard.press("Enter");
  await page.keyboard.press("Escape");
}

/** Goes with the wire in hand from terminal to terminal by arrows, and presses a key on the one that is wanted. */
export async function take(page: Page, point: string, key = "Enter"): Promise<void> {
  await page.getByRole("application").focus();
  const said = page.locator("main [role=status]").first();
  const lots = lotsOf(7);
  for (let tries = 0; tries < 120; tries++) {
    if ((await said.textContent())?.startsWith(`${point},`)) return page.keyboard.press(key);
    await page.keyboard.press(lots.oneOf(["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"]));
  }
  throw new Error(`no arrow leads to ${point}`);
}
