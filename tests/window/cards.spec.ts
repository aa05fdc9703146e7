import { openSample } from "./acts.ts";
import { expect, story } from "./story.ts";

story(
  "what is chosen is told beside the tools, and the card of a new wire stands in no way and is read whole",
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "Horn");
    const drawing = page.getByRole("application");
    const sheet = (await drawing.boundingBox())!;

    // A menu as by a right click: the row over the drawing is the one that a fitted drawing keeps free.
    await drawing.focus();
    await page.keyboard.press("PageDown");
    await page.keyboard.press("Shift+F10");
    await expect(page.getByRole("dialog", { name: /^What can be done/ })).toBeVisible();
    const bar = (await page.getByRole("toolbar", { name: "What is chosen" }).boundingBox())!;
    expect(bar.y + bar.height - sheet.y).toBeLessThanOrEqual(64);
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");

    // A wire from terminal to terminal by keys.
    await drawing.focus();
    await page.keyboard.press("l");
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("Enter");
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("Enter");
    const card = page.getByRole("group", { name: /^Wire W/ });
    await expect(card).toBeVisible();
    const box = (await card.boundingBox())!;
    const edges = [
      box.x - sheet.x,
      sheet.x + sheet.width - box.x - box.width,
      sheet.y + sheet.height - box.y - box.height,
    ];
    expect(Math.min(...edges)).toBeLessThanOrEqual(13);
    const hint = await card.getByRole("textbox", { name: "Measured ohms" }).evaluate((field: HTMLInputElement) => {
      const pen = document.createElement("canvas").getContext("2d")!;
      pen.font = getComputedStyle(field).font;
      return { room: field.clientWidth, words: pen.measureText(field.placeholder).width };
    });
    expect(hint.words).toBeLessThanOrEqual(hint.room);
  },
);

story(
  "the card that says why stays while the pointer is on it, and goes once it is on neither",
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "Horn");
    const drawing = page.getByRole("application");
    const sheet = (await drawing.boundingBox())!;
    const card = page.getByRole("tooltip");
    // Across the page, until the pointer rests on a wire.
    for (let x = sheet.x + 40; !(await card.isVisible()); x += 6) {
      expect(x).toBeLessThan(sheet.x + sheet.width);
      await page.mouse.move(x, sheet.y + sheet.height * 0.65);
      await page.waitForTimeout(220);
    }
    const box = (await card.boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2, { steps: 4 });
    await page.waitForTimeout(1_500);
    await expect(card).toBeVisible();
    await page.mouse.move(sheet.x + 5, sheet.y + sheet.height - 5, { steps: 4 });
    await expect(card).toHaveCount(0);
  },
);
