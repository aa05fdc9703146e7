import { expect, story } from "./story.ts";

story(
  "a lesson is started from the first screen; its scenes ask, and an answer comes only when it is opened",
  async ({ program }) => {
    const { page } = program;
    await page.getByRole("button", { name: "Start a lesson" }).click();
    await expect(
      page.getByRole("button", { name: /^Power, ground and floating.*12.questions, 2.hidden faults/ }),
    ).toBeFocused();
    // Past the two hidden faults of the first lesson to the next one.
    for (const key of ["Tab", "Tab", "Tab", "Enter"]) await page.keyboard.press(key);
    await expect(page.getByRole("heading", { name: "What differs from rest" })).toBeVisible();
    await page.getByRole("button", { name: /^Pump unplugged, switch off/ }).click();
    const questions = page.getByRole("list", { name: "Questions of Pump unplugged, switch off" });
    await expect(questions.getByRole("listitem")).toHaveCount(2);
    await expect(questions.getByText("A meter draws next to nothing")).toBeHidden();
    await questions.getByText("Answer").nth(1).click();
    await expect(questions.getByText("A meter draws next to nothing")).toBeVisible();

    await page.getByRole("checkbox", { name: /Only what changed/ }).check();
    const everything = page.getByRole("button", { name: "Show everything" });
    await expect(everything).toBeVisible();
    await page.locator(".sheet-canvas").focus();
    await page.keyboard.press("d");
    await expect(everything).toBeHidden();

    await page.getByRole("button", { name: "back to the library" }).click();
    await page.getByRole("button", { name: "Find hidden fault 2 of A reversing motor and its switch" }).click();
    await expect(page.getByRole("heading", { name: /Window goes down: dead/ })).toBeVisible();
  },
);
