import AxeBuilder from "@axe-core/playwright";
import type { Page } from "@playwright/test";

/** The checker's rules for colours. */
const OF_COLOURS = ["color-contrast", "link-in-text-block"];

/** What the checker for accessibility finds in the page, one line each; with `colours`, by its rules for those alone. */
export async function axeFinds(page: Page, where: string, rules?: "colours"): Promise<readonly string[]> {
  // The size of what is pressed (WCAG 2.2, 2.5.8) is not among what it looks at unasked.
  const checker = new AxeBuilder({ page }).options({ rules: { "target-size": { enabled: true } } });
  if (rules === "colours") checker.withRules(OF_COLOURS);
  const { violations } = await checker.analyze();
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${where}: ${id} ${html.slice(0, 160)}`));
}
