import { openSample, throwTo } from "./acts.ts";
import { HUES, pixelsOf } from "./canvas.ts";
import { expect, story } from "./story.ts";
import { openView } from "./views.ts";

story(
  "the continuity table of a switch is edited as the printed chart, and the circuit follows",
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "Roof vents");
    await throwTo(page, "S1", "on");
    await page.keyboard.press("Control+f");
    await page.keyboard.type("S6");
    await page.keyboard.press("Enter");
    const before = await pixelsOf(page, HUES.powered);
    await page.getByRole("toolbar", { name: "What is chosen" }).getByRole("button", { name: "Edit" }).click();
    const editor = page.getByRole("main", { name: "Editor of S6" });
    await expect(editor).toContainText("switch, five terminals, springs back both ways");
    await expect(page.getByRole("application")).toHaveCount(0);

    // Two circles part 4 from 1, two more join it with 6: at rest the switch now feeds its motor.
    const circle = (words: string) => editor.getByRole("button", { name: words, exact: true });
    const reads = editor.getByRole("region", { name: "Reads as" });
    await circle("4 in Rest, joined with 1").click();
    await expect(editor).toContainText("4 is chosen, joined with 1. Choose 1 to part them.");
    await circle("1 in Rest, joined with 4").click();
    await circle("4 in Rest, alone").click();
    await circle("6 in Rest, alone").click();
    await expect(circle("4 in Rest, joined with 6")).toBeVisible();
    await expect(reads).toContainText("6 feeds 4, 5 goes home by 2");

    // The same by keys: an arrow, Enter, an arrow, Enter; Escape lets go of what is chosen and leaves nothing else.
    await circle("6 in Close, joined with 5").focus();
    await page.keyboard.press("Enter");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    await expect(circle("5 in Close, alone")).toBeFocused();
    await page.keyboard.press("Enter");
    await page.keyboard.press("Escape");
    await expect(editor).toContainText("Choose two circles of a row");
    await page.keyboard.press("Control+z");
    await expect(circle("5 in Close, joined with 6")).toBeVisible();

    // A name that another position has is refused beside it and stays typed; a free one is taken.
    const name = editor.getByRole("textbox", { name: "Position open" });
    await name.fill("close");
    await name.press("Enter");
    await expect(editor.getByRole("alert")).toBeVisible();
    await expect(name).toHaveValue("close");
    await name.fill("lift");
    await name.press("Enter");
    await expect(editor.getByRole("alert")).toHaveCount(0);
    await expect(reads).toContainText("Lift");

    // The first Escape leaves the field, the next one the editor; the drawing has the focus and shows what was edited.
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    await expect(page.getByRole("application")).toBeFocused();
    await expect.poll(() => pixelsOf(page, HUES.powered)).toBeGreaterThan(before);
    await openView(page, "List");
    await page.getByRole("searchbox", { name: "Narrow the list" }).fill("M4");
    const motor = page.locator(".row", { has: page.getByText("M4", { exact: true }) }).first();
    await expect(motor).toContainText("runs");
    const more = page.getByRole("button", { name: /More controls, \d+ at rest/ });
    await more.click();
    const onStrip = page.getByRole("group", { name: /^S6/ });
    await expect(onStrip.getByRole("button", { name: /^Lift/ })).toBeVisible();

    // Undone one by one: the name, the join, the parting.
    await page.getByRole("application").focus();
    for (let count = 0; count < 3; count++) await page.keyboard.press("Control+z");
    await expect(motor).not.toContainText("runs");
    await more.click();
    await expect(onStrip.getByRole("button", { name: /^Open/ })).toBeVisible();
  },
);
