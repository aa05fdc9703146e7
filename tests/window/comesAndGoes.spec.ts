import { openSample } from "./acts.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

story(
  "a fault comes and goes; a meter keeps min and max of it, a key resets them, and it can be stopped",
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "A reversing motor");
    await page.getByRole("button", { name: /^Held up/ }).click();
    await openView(page, "Instruments");
    await page.getByRole("button", { name: /^Voltmeter/ }).click();
    await page.keyboard.press("Escape");
    const meter = page.getByRole("region", { name: "Voltmeter" });
    await meter.getByLabel("Red on").fill("X2-1");
    await meter.getByLabel("Red on").press("Enter");
    await openView(page, "Faults");
    await page.getByLabel(/^What is faulty/).fill("X3-1");
    await page.getByRole("checkbox", { name: "Comes and goes" }).check();
    await page.getByRole("textbox", { name: /^Number of its pattern/ }).fill("5");
    await page.getByRole("button", { name: "Put in" }).click();
    const planted = page.locator(".planted");
    await expect(planted).toContainText("comes and goes: away", { timeout: 6_000 });
    await expect(planted).toContainText("comes and goes: there", { timeout: 6_000 });

    await page.getByRole("button", { name: "Stop time" }).click();
    await openView(page, "Instruments");
    await expect(meter).toContainText(/min −?0\.0\d · max 12\.\d/);
    await page.locator(".sheet-canvas").focus();
    await page.keyboard.press("v");
    await expect(meter.getByText(/^min/)).toBeHidden();
    await page.getByRole("button", { name: "Next change" }).click();
    await expect(meter).toContainText(/min .* · max /);
    await expect(page.getByRole("button", { name: "Go on" })).toBeVisible();
  },
);
