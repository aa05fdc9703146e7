import { expect, type Locator, type Page } from "@playwright/test";

/** Opens a sample from the library by the words on its tile; gives the title of its circuit. */
export async function openSample(page: Page, words: string): Promise<string> {
  const tile = page.locator(".tile", { hasText: words });
  const title = await tile.locator("b").textContent();
  await tile.click();
  await expect(page).toHaveTitle(`${title} – Wirefathom`);
  return title ?? "";
}

/** A position of a control on the strip under the drawing: `positionOf(page, "S1", "on")`. */
export function positionOf(page: Page, control: string, position: string): Locator {
  const controls = page.getByRole("region", { name: "Controls" }).locator(".control", { hasText: control });
  return controls.locator(`[data-position="${position}"]`);
}

/** Throws a control to a position that stays. */
export async function throwTo(page: Page, control: string, position: string): Promise<void> {
  await positionOf(page, control, position).click();
  await expect(positionOf(page, control, position)).toHaveAttribute("aria-pressed", "true");
}
