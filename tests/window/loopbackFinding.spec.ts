import { openSample, positionOf } from "./acts.ts";
import { axeFinds } from "./axe.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

/** What a worker may take on a busy machine, milliseconds. */
const WORKER_MS = 40_000;

story(
  "shared paths: a sneak path is shown in one step, a jumper is checked before it is clipped on",
  async ({ program }) => {
    story.slow();
    const { page } = program;
    await openSample(page, "Exterior lights");
    await openView(page, "Shared paths");
    await page.getByRole("combobox", { name: /^Fuse, splice/ }).selectOption("GP6");
    await expect(page.getByRole("region", { name: "Loads" })).toBeVisible({ timeout: WORKER_MS });
    await page.getByRole("button", { name: "Search every position" }).click();
    const group = page.locator(".sneak-group", { hasText: "Something runs that should not" });
    await expect(group).toHaveAttribute("open", { timeout: WORKER_MS });

    // Held at flash with GP3 off: position, fault and what is chosen come together, and one undo takes all back.
    const said = await group.locator(".sneak p").first().textContent();
    await group.getByRole("button", { name: "Show it" }).first().click();
    await expect(positionOf(page, "S2", "flash")).toHaveAttribute("aria-pressed", "true");
    const fault = page
      .getByRole("group", { name: "Wires as they would be with" })
      .getByRole("button", { name: "The fault" });
    await expect(fault).toHaveAttribute("aria-pressed", "true");
    expect(said).toContain("GP3 off its stud");
    await page.keyboard.press("Control+z");
    await expect(fault).toHaveCount(0);
    await expect(positionOf(page, "S2", "flash")).toHaveAttribute("aria-pressed", "false");

    // A wrong end says why and stays; the right one is answered.
    const jumper = page.getByRole("region", { name: "Jumper" });
    await jumper.getByLabel("Jumper from").fill("X99-1");
    await jumper.getByLabel("Jumper to").fill("battery -");
    await page.keyboard.press("Enter");
    await expect(jumper.locator(".error")).toContainText("X99", { timeout: WORKER_MS });
    await jumper.getByLabel("Jumper from").fill("battery +");
    await page.keyboard.press("Enter");
    await expect(jumper.locator(".jumper-said")).toContainText(
      /would flow through the jumper's own fuse \(5\u00A0A\)/,
      {
        timeout: WORKER_MS,
      },
    );
    await expect(jumper.getByText(/dead short/)).toBeVisible();
    expect(await axeFinds(page, "Shared paths")).toEqual([]);
  },
);

story("a battery that goes flat and a check that fails sometimes have rows of their own", async ({ program }) => {
  story.slow();
  const { page } = program;
  await openSample(page, "Horn");
  await openView(page, "Probe order");
  await page.getByRole("button", { name: "The battery goes flat" }).click();
  await expect(page.getByLabel("Expected asleep")).toBeVisible({ timeout: WORKER_MS });
  await expect(page.locator(".step", { hasText: "mV" }).first()).toBeVisible({ timeout: WORKER_MS });
  expect(await axeFinds(page, "a battery that goes flat")).toEqual([]);

  await page.getByRole("button", { name: "Change", exact: true }).click();
  await page.locator(".choices").getByRole("button", { name: /horn/i }).first().click();
  await page.getByLabel("How it fails").selectOption({ label: "Sometimes" });
  const places = page.getByRole("region", { name: "Wiggle sheet" });
  await expect(places.locator("li").first()).toBeVisible({ timeout: WORKER_MS });
  await places.getByRole("checkbox", { name: "Bumps" }).check();
  expect(await axeFinds(page, "what fails sometimes")).toEqual([]);
});
