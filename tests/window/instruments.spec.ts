import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "@playwright/test";
import { openSample, throwTo } from "./acts.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

/** Chooses a point high on the page by the search, and gives where it is on the screen: its menu opens right there. */
async function pixelOf(page: Page, point: string): Promise<{ readonly x: number; readonly y: number }> {
  await find(page, point);
  await page.keyboard.press("Shift+F10");
  const box = await page.getByRole("dialog", { name: `What can be done with ${point}` }).boundingBox();
  if (!box) throw new Error(`${point} has no menu`);
  await page.keyboard.press("Escape");
  return { x: box.x, y: box.y };
}

async function find(page: Page, name: string): Promise<void> {
  await page.keyboard.press("Control+f");
  await page.keyboard.type(name);
  await page.keyboard.press("Enter");
}

story(
  "a voltmeter and a lamp stay on while switches are thrown, and a jumper melts its own fuse on a short",
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "Roof vents");
    const blade = await pixelOf(page, "F3.2");
    await openView(page, "Instruments");
    const take = page.getByRole("region", { name: "Take an instrument" });

    // The red lead by a press on the drawing; the black one goes to battery − by itself.
    await take.getByRole("button", { name: "Voltmeter" }).click();
    await page.mouse.click(blade.x, blade.y);
    const meter = page.getByRole("region", { name: /^Voltmeter/ });
    await expect(meter.getByLabel("Red on")).toHaveValue("F3.2");
    await expect(meter.getByLabel("Black on")).toHaveValue("battery -");
    await expect(meter.getByText("A lead floats")).toBeVisible();
    await throwTo(page, "S1", "on");
    await expect(meter.locator("output")).toHaveText(/12\.\d\d/);
    await expect(meter.getByText("max 12.60")).toBeVisible();
    await meter.getByRole("button", { name: "Reset min and max" }).click();
    await expect(meter.getByText(/max/)).toHaveCount(0);

    // By key alone: a lamp across the feed and ground is bright, and goes dark with the key off.
    await take.getByRole("button", { name: "Test lamp" }).press("Enter");
    await find(page, "X5-6");
    await page.keyboard.press("Enter");
    const lamp = page.getByRole("region", { name: /^Test lamp/ });
    await expect(lamp.getByLabel("Red on")).toHaveValue("X5-6");
    await expect(lamp.locator("output")).toHaveText("bright");
    await throwTo(page, "S1", "off");
    await expect(lamp.locator("output")).toHaveText("dark");

    // A wrong place is said beside the field and kept as typed; an instrument put away is undone back.
    const red = lamp.getByLabel("Red on");
    await red.fill("X5-66");
    await red.press("Enter");
    await expect(lamp.getByRole("alert")).toContainText("X5");
    await expect(red).toHaveValue("X5-66");
    await lamp.getByRole("button", { name: "Put the test lamp 2 away" }).click();
    await expect(lamp).toHaveCount(0);
    await page.keyboard.press("Control+z");
    await expect(lamp).toBeVisible();

    // A jumper from the battery pulls the relay in; across the battery its own fuse melts.
    await take.getByRole("button", { name: "Jumper lead" }).click();
    const jumper = page.getByRole("region", { name: /^Jumper lead/ });
    await jumper.getByLabel("Red on").fill("battery +");
    await jumper.getByLabel("Red on").press("Enter");
    await jumper.getByLabel("Black on").fill("K1.86");
    await jumper.getByLabel("Black on").press("Enter");
    await expect(jumper.getByText("Hands and tools clear")).toBeVisible();
    await expect(jumper.locator("output")).toHaveText(/\d\smA$/);
    await jumper.getByLabel("Black on").fill("GP2.stud");
    await jumper.getByLabel("Black on").press("Enter");
    await expect(jumper.locator("output")).toHaveText("fuse melted");
    await expect(jumper.getByRole("button", { name: "Put a new fuse in" })).toBeVisible();

    // An ohmmeter on a live wire is refused in words.
    await take.getByRole("button", { name: "Ohmmeter" }).click();
    const ohms = page.getByRole("region", { name: /^Ohmmeter/ });
    await throwTo(page, "S1", "on");
    await ohms.getByLabel("Red on").fill("X5-6");
    await ohms.getByLabel("Red on").press("Enter");
    await ohms.getByLabel("Black on").fill("GP2.stud");
    await ohms.getByLabel("Black on").press("Enter");
    await expect(ohms.getByText("X5-6 is live")).toBeVisible();

    const found = await new AxeBuilder({ page }).analyze();
    expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);

    // Instruments are part of the bench: they are there again after a restart.
    await page.waitForTimeout(1_000);
    await program.restart();
    await openView(program.page, "Instruments");
    await expect(program.page.getByRole("region", { name: /^Jumper lead/ }).locator("output")).toHaveText(
      "fuse melted",
    );
  },
);
