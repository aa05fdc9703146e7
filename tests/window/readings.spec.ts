import { openSample } from "./acts.ts";
import { entryText, planted } from "./planted.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

story(
  "readings typed by key shrink the suspects to the broken wire, and are there again after a restart",
  async ({ program }) => {
    story.slow();
    const { page } = program;
    await openSample(page, "Horn");
    await openView(page, "Probe order");
    await page.getByRole("button", { name: "Low horn sounds" }).focus();
    await page.keyboard.press("Enter");
    // Whoever chose the complaint by key types the first reading without going anywhere.
    const field = page.locator(".reading-field input");
    await expect(field).toBeFocused({ timeout: 20_000 });

    // The vehicle has W13 broken: every row shows what that circuit shows, until the program is sure.
    const vehicle = planted("4-horn", "low-horn", "W13:open");
    let rows = 0;
    for (let row = vehicle.next(); row !== null; row = vehicle.next()) {
      await expect(page.locator(".step.is-active .step-head b").first()).toHaveText(row.point, { timeout: 20_000 });
      await expect(page.locator(".is-old")).toHaveCount(0, { timeout: 20_000 });
      await expect(field).toBeFocused();
      await page.keyboard.type(entryText(row.shows));
      const says = page.locator(".reading-says");
      await expect(says).toContainText(`Step ${row.number}:`);
      await expect(says).toBeInViewport({ ratio: 1 });
      await page.keyboard.press("Enter");
      rows += 1;
    }
    expect(rows).toBeGreaterThan(1);
    const found = page.getByText(/^Found: W13 broken/);
    await expect(found).toBeVisible({ timeout: 20_000 });

    await openView(page, "Suspects");
    const leader = page.locator(".suspect.is-leader");
    await expect(leader.locator(".suspect-name")).toHaveText("W13 broken");
    await leader.locator(".suspect-head").click();
    await expect(page.getByText(/Cleared by reading \d/).first()).toBeVisible();
    // Each side of the break shows its own state, until the wires are asked for as they are.
    await expect(page.locator("[data-region=said]")).toContainText(/^Wires with W13 broken\. .*W13 .*floating/);
    const choices = page.getByRole("group", { name: "Wires as they would be with" });
    await expect(choices.getByRole("button", { name: "W13 broken" })).toHaveAttribute("aria-pressed", "true");
    await choices.getByRole("button", { name: "Nothing wrong" }).click();
    await expect(page.locator("[data-region=said]")).toContainText(/^Wires as they are\./);

    // Struck out, readings count for nothing; undone, they do again.
    await openView(page, "Readings");
    const readings = page.locator(".reading-row");
    const count = await readings.count();
    expect(count).toBe(vehicle.count());
    for (let number = 1; number <= count; number++)
      await page.getByRole("button", { name: `Strike out reading ${number}`, exact: true }).click();
    await expect(page.getByRole("button", { name: `Take as right reading ${count}`, exact: true })).toBeFocused();
    await expect(readings.last()).toHaveClass(/is-struck/);
    await expect(found).toHaveCount(0, { timeout: 20_000 });
    for (let number = 1; number <= count; number++) await page.keyboard.press("Control+z");
    await expect(found).toBeVisible({ timeout: 20_000 });
    await expect(page.locator(".reading-row.is-struck")).toHaveCount(0);

    // A browser lets a closed page go at once: the last undo has the second that is promised.
    await page.waitForTimeout(1_000);
    await program.restart();
    await openView(program.page, "Readings");
    await expect(program.page.locator(".reading-row")).toHaveCount(count);
    await expect(program.page.getByText(/^Found: W13 broken/)).toBeVisible({ timeout: 20_000 });
  },
);

story(
  "a wrong entry says why beside the field and keeps what was typed; a reading is undone from the field",
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "Horn");
    await openView(page, "Probe order");
    await page.locator("aside").getByRole("button", { name: /horn/i }).first().click();
    const field = page.locator(".reading-field input");
    await expect(field).toBeVisible({ timeout: 20_000 });
    for (const [typed, words] of [
      ["400 400", /400/],
      ["99 = 1", /There is no row 99/],
      ["x = 1", /write 7=11\.9 8=0\.1/],
    ] as const) {
      await field.fill(typed);
      await page.keyboard.press("Enter");
      await expect(page.locator(".reading-says .value-trouble")).toContainText(words);
      await expect(field).toHaveValue(typed);
    }
    // What is typed is undone in the field; one that a reading has emptied undoes the reading.
    await field.fill("");
    await page.keyboard.type("clicks");
    await page.keyboard.press("Control+z");
    await expect(field).not.toHaveValue("clicks");
    await field.fill("clicks");
    await page.keyboard.press("Enter");
    await expect(field).toHaveValue("");
    await field.focus();
    await page.keyboard.press("Control+z");
    await openView(page, "Readings");
    await expect(page.getByText("Nothing was read yet")).toBeVisible();
    await page.getByRole("textbox", { name: "Battery at rest" }).fill("400");
    await page.keyboard.press("Enter");
    await expect(page.getByText(/400 V cannot be a 12 V battery at rest/)).toBeVisible();
  },
);
