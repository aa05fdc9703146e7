import type { Page } from "@playwright/test";

/** Opens a view of the side panel by its words, whether its tab is in the row or behind the dots. */
export async function openView(page: Page, words: string): Promise<void> {
  const views = page.getByRole("navigation", { name: "Views" });
  const tab = views.locator(".tab", { hasText: words });
  if (await tab.count()) return tab.first().click();
  await views.getByRole("button", { name: "More views" }).click();
  await views.getByRole("button", { name: words, exact: true }).click();
}
