import { openSample, positionOf, throwTo } from "./acts.ts";
import { HUES, pixelsOf } from "./canvas.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

story(
  "a switch is thrown, and the drawing, the list and the words tell what every wire is",
  { tag: "@both" },
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "Roof vents");
    const said = page.locator("[data-region=said]");
    const before = await pixelsOf(page, HUES.powered);
    await throwTo(page, "S1", "on");
    await expect(said).toContainText("Key on");
    await expect(said).toContainText("K1 pulls in");
    await expect.poll(() => pixelsOf(page, HUES.powered)).toBeGreaterThan(before + 500);

    await openView(page, "List");
    const wire = page.locator(".row", { has: page.getByText("W13", { exact: true }) });
    await expect(wire).toContainText("powered");
    await page.getByRole("searchbox", { name: "Narrow the list" }).fill("M3");
    const motor = page.locator(".row", { has: page.getByText("M3", { exact: true }) }).first();
    await expect(motor).not.toContainText("runs");

    // Held, it runs; let go, it stands still.
    const open = positionOf(page, "S2", "open").first();
    await open.hover();
    await page.mouse.down();
    await page.waitForTimeout(400);
    await expect(said).toContainText(/held open/i);
    await expect(page.locator(".status")).toContainText("held open");
    await page.mouse.up();
    await expect(page.locator(".status")).not.toContainText("held open");

    // Clicked shortly, it stays pinned until it is let go.
    await open.click();
    await expect(open).toHaveAttribute("aria-pressed", "true");
    await expect(page.locator(".status")).toContainText("held open");
    await page.keyboard.press("Control+z");
    await expect(open).toHaveAttribute("aria-pressed", "false");
  },
);

story("a fault is put in, what differs is marked, and the good circuit is one click away", async ({ program }) => {
  const { page } = program;
  await openSample(page, "Horn");
  await openView(page, "Faults");
  await page.getByRole("combobox", { name: /What is faulty/ }).fill("F2");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: /F2 blown/ }).first()).toBeVisible();
  await openView(page, "List");
  await expect(page.locator(".row", { hasText: "differs" }).first()).toBeVisible();
  const withFault = await pixelsOf(page, HUES.powered);
  await page.getByRole("button", { name: "Nothing wrong" }).click();
  await expect(page.locator(".row", { hasText: "differs" })).toHaveCount(0);
  await expect.poll(() => pixelsOf(page, HUES.powered)).toBeGreaterThan(withFault);

  // From the wire's own menu on the drawing, reached by keys.
  await page.getByRole("application").focus();
  await page.keyboard.press("Home");
  await page.keyboard.press("ContextMenu");
  const menu = page.getByRole("dialog", { name: /What can be done/ });
  await expect(menu).toBeVisible();
  await page.keyboard.press("Escape");
  await expect(menu).toHaveCount(0);
  await expect(page.getByRole("application")).toBeFocused();
});
