import AxeBuilder from "@axe-core/playwright";
import type { Page } from "@playwright/test";

/** What the checker for accessibility finds in the page, one line each. */
export async function axeFinds(page: Page, where: string): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${where}: ${id} ${html.slice(0, 160)}`));
}
