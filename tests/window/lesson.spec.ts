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

    // One more is asked of a point, and taken back; another is left out.
    const more = page.getByRole("button", { name: "Ask the class something here" });
    await more.focus();
    await page.keyboard.press("Enter");
    const form = page.getByRole("region", { name: "Ask something in Pump unplugged, switch off" });
    await expect(form.getByLabel("About which point")).toBeFocused();
    await form.getByLabel("About which point").selectOption("S1.1");
    await form.getByRole("button", { name: "Ask its state" }).click();
    await expect(more).toBeFocused();
    await expect(questions.getByRole("listitem")).toHaveCount(3);
    await expect(questions.getByRole("listitem").last()).toContainText("What is S1.1");
    await page.keyboard.press("Control+z");
    await expect(questions.getByRole("listitem")).toHaveCount(2);
    const first = await questions.getByRole("listitem").first().locator("p").first().textContent();
    await page.getByRole("button", { name: /^More for question 1 of/ }).click();
    await page.getByRole("button", { name: "Do not ask it" }).click();
    await expect(questions.getByText(first ?? "")).toHaveCount(0);
    await expect(questions.getByRole("listitem")).toHaveCount(1);
    await page.keyboard.press("Control+z");
    await expect(questions.getByRole("listitem")).toHaveCount(2);

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
