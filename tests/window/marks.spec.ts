import { openSample } from "./acts.ts";
import { expect, story } from "./story.ts";

story(
  "loose ends stand under their own heading, and a refused designator covers no other field",
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "Horn");
    // A part that is not wired.
    await page.getByRole("application").focus();
    await page.keyboard.press("PageDown");
    await page.keyboard.press("Control+d");
    const count = page.getByRole("button", { name: /loose end/ });
    await count.click();
    const groups = page.locator(".status-end section h3");
    await expect(groups.last()).toHaveText(/^\d+\sloose ends?, not finished yet$/);
    await page.keyboard.press("Escape");

    await page.getByRole("application").focus();
    await page.keyboard.press("PageDown");
    await page.keyboard.press("F2");
    const field = page.getByRole("textbox", { name: "Designator" });
    await field.fill("S1 S2");
    await field.press("Enter");
    const trouble = (await page.locator(".editor-trouble").first().boundingBox())!;
    const own = (await field.boundingBox())!;
    expect(trouble.y).toBeGreaterThanOrEqual(own.y + own.height);
    const others = await page.locator(".editor input, .editor select").all();
    for (const other of others) {
      const box = await other.boundingBox();
      if (!box) continue;
      const isApart =
        box.x >= trouble.x + trouble.width ||
        box.x + box.width <= trouble.x ||
        box.y >= trouble.y + trouble.height ||
        box.y + box.height <= trouble.y;
      expect(isApart).toBe(true);
    }
  },
);
