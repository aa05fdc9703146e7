import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { unpackCircuit } from "../../electron/pack/pack.ts";
import { begin, boxOf, give, RED } from "./paperInSight.ts";
import { FIELD, pdf, photograph } from "./printedFiles.ts";
import { dragOntoPaper } from "./squaring.ts";
import { expect, story } from "./story.ts";

const GREEN = [0, 150, 60] as const;
/** The bench that the photographed sheet lies on. */
const BENCH = [95, 95, 93] as const;

story(
  "a photograph taken at an angle is made square, and is there after a restart and in the saved file",
  { tag: "@both" },
  async ({ program }) => {
    const { page, folder } = program;
    const file = join(folder, "bench.jpg");
    const photo = photograph();
    writeFileSync(file, photo.jpeg);
    await begin(page);
    const dialog = await give(page, file);
    await dialog.getByRole("button", { name: "Bring in 1 page" }).click();
    await expect.poll(async () => (await boxOf(page, GREEN)).count).toBeGreaterThan(1_000);

    await page.getByRole("button", { name: "Make square" }).click();
    await dragOntoPaper(page, photo);
    await page.getByLabel("The paper is").selectOption("A4");
    await page.getByRole("button", { name: "Take it" }).click();

    const isSquare = async (): Promise<void> => {
      await expect
        .poll(async () => {
          const rim = await boxOf(page, GREEN);
          return (rim.right - rim.left) / (rim.bottom - rim.top);
        })
        .toBeCloseTo(297 / 210, 1);
      expect((await boxOf(page, BENCH, 25)).count).toBeLessThan(200);
      const [rim, field] = [await boxOf(page, GREEN), await boxOf(page, RED)];
      const [width, height] = [rim.right - rim.left, rim.bottom - rim.top];
      expect((field.left - rim.left) / width).toBeCloseTo(FIELD.left, 1.6);
      expect((field.right - rim.left) / width).toBeCloseTo(FIELD.right, 1.6);
      expect((field.top - rim.top) / height).toBeCloseTo(FIELD.top, 1.6);
      expect((field.bottom - rim.top) / height).toBeCloseTo(FIELD.bottom, 1.6);
      // What was at an angle fills its box now.
      const area = (field.right - field.left) * (field.bottom - field.top);
      expect(field.count / area).toBeGreaterThan(0.93);
    };
    await isSquare();
    await page.keyboard.press("Control+z");
    await expect.poll(async () => (await boxOf(page, BENCH, 25)).count).toBeGreaterThan(1_000);
    await page.keyboard.press("Control+y");
    await isSquare();

    await page.getByText("White paper").click();
    const paper = [245, 245, 240] as const;
    await expect.poll(async () => (await boxOf(page, paper)).count).toBeLessThan(400);
    expect((await boxOf(page, RED)).count).toBeGreaterThan(500);

    const { name, bytes } = await program.saved(() => page.keyboard.press("Control+s"));
    expect(name).toMatch(/\.wirefathom$/);
    const packed = unpackCircuit(bytes);
    expect(packed.ok && packed.value.pictures.map(({ picture }) => [picture.mime, picture.widthPx])).toEqual([
      ["image/jpeg", photo.width],
    ]);

    await program.restart();
    await expect.poll(async () => (await boxOf(program.page, RED)).count).toBeGreaterThan(500);

    const saved = join(folder, "again.wirefathom");
    writeFileSync(saved, bytes);
    await program.restart(saved);
    await expect.poll(async () => (await boxOf(program.page, RED)).count).toBeGreaterThan(500);
  },
);

story(
  "pages of a PDF are chosen by number, lie under pages of their own, and go again by one undo",
  { tag: "@both" },
  async ({ program }) => {
    const { page, folder } = program;
    const file = join(folder, "manual.pdf");
    writeFileSync(file, await pdf(5));
    await begin(page);
    const dialog = await give(page, file);
    const numbers = dialog.getByRole("textbox");
    await numbers.fill("2, 4-9");
    await expect(dialog.getByText("4-9 names no pages")).toBeVisible();
    await numbers.fill("2, 4-5");
    await expect(dialog.getByRole("checkbox", { checked: true })).toHaveCount(3);
    await dialog.getByRole("button", { name: "Bring in 3 pages" }).click();
    await expect(page.getByText("Under the drawing of manual.pdf, page 2")).toBeVisible();
    await expect.poll(async () => (await boxOf(page, RED)).count).toBeGreaterThan(500);
    await expect(page.getByRole("button", { name: "manual.pdf, page 5" }).first()).toBeVisible();
    await page.keyboard.press("Control+z");
    await expect(page.getByText("No printed page lies under this page")).toBeVisible();
  },
);

story(
  "a part is tied to the print under it, shows where it is printed, and is printed over it",
  async ({ program }) => {
    const { page, folder } = program;
    const file = join(folder, "manual.pdf");
    writeFileSync(file, await pdf(1));
    await begin(page);
    const dialog = await give(page, file);
    await dialog.getByRole("button", { name: "Bring in 1 page" }).click();
    await expect.poll(async () => (await boxOf(page, RED)).count).toBeGreaterThan(500);
    await page.getByRole("button", { name: "Add a part" }).click();
    await page.getByRole("button", { name: /^Fuse/ }).first().click();
    const drawing = (await page.locator(".sheet-canvas").boundingBox())!;
    const at = { x: drawing.width / 2, y: drawing.height / 2 };
    await page.mouse.click(drawing.x + at.x, drawing.y + at.y);
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    await page.mouse.click(drawing.x + at.x, drawing.y + at.y, { button: "right" });
    const menu = page.getByRole("dialog", { name: /^What can be done with F1/ });
    await menu.getByRole("button", { name: "Tie to the print under it" }).click();
    await page.mouse.click(drawing.x + at.x, drawing.y + at.y, { button: "right" });
    await expect(menu.getByRole("button", { name: "Show where it is printed" })).toBeVisible();
    await menu.getByRole("button", { name: "Untie from the print" }).click();
    await expect(menu.getByRole("button", { name: "Show where it is printed" })).toHaveCount(0);

    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: "Print", exact: true }).click();
    const print = page.getByRole("dialog", { name: "Print" });
    await print.getByText("Printed pages under it").click();
    await expect(print.getByRole("img", { name: "The printed page under the drawing" })).toBeVisible();
    const { bytes } = await program.saved(() => print.getByRole("button", { name: "Save as PDF" }).click());
    expect(
      Buffer.from(bytes)
        .toString("latin1")
        .match(/\/Subtype \/Image/g),
    ).toHaveLength(1);
    // The browser prints each page on its own paper, which the dialog must not stand in the way of.
    const paper = await page.pdf({ preferCSSPageSize: true });
    expect(paper.toString("latin1")).toMatch(/\/MediaBox \[0 0 84\d\.?\d* 59\d\.?\d*\]/);
    await expect(print).toBeVisible();
    await page.keyboard.press("Escape");
    await expect(print).toHaveCount(0);
  },
);

story(
  "a picture is pasted on the drawing, another dropped on it, faded, locked and moved by keys",
  { tag: "@both" },
  async ({ program }) => {
    const { page } = program;
    await begin(page);
    const given = async (kind: "paste" | "drop"): Promise<void> => {
      await page.locator(".sheet-canvas").evaluate(
        async (drawing, [kind, base64]) => {
          const data = new DataTransfer();
          const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
          data.items.add(new File([bytes], "image.jpg", { type: "image/jpeg" }));
          const about = { bubbles: true, cancelable: true };
          drawing.dispatchEvent(
            kind === "paste"
              ? new ClipboardEvent("paste", { clipboardData: data, ...about })
              : new DragEvent("drop", { dataTransfer: data, ...about }),
          );
        },
        [kind, photograph().jpeg.toString("base64")] as const,
      );
      await page.getByRole("dialog").getByRole("button", { name: "Bring in 1 page" }).click();
    };
    await given("paste");
    await expect(page.getByRole("textbox", { name: "Title of Pasted picture" })).toBeVisible();
    await given("drop");
    const rows = page.getByRole("list", { name: /^Printed pages under this page/ }).getByRole("listitem");
    await expect(rows).toHaveCount(2);
    await rows.first().getByText("Shown").click();
    await rows.last().getByText("Locked").click();
    await expect(rows.last().getByRole("button", { name: "Make square" })).toBeDisabled();
    await rows
      .last()
      .getByRole("slider", { name: /^Strength/ })
      .focus();
    for (let step = 0; step < 3; step++) await page.keyboard.press("ArrowLeft");
    await rows.first().getByRole("button", { name: "Move and scale" }).click();
    const corner = page.getByRole("button", { name: /^Top left corner/ });
    const leftOf = async (): Promise<number> =>
      Number(/, (-?\d+),/.exec((await corner.getAttribute("aria-label")) ?? "")![1]);
    await expect(page.getByRole("button", { name: "The whole page" })).toBeFocused();
    const left = await leftOf();
    for (let step = 0; step < 2; step++) await page.keyboard.press("Shift+ArrowRight");
    expect(await leftOf()).toBe(left + 20);
    await page.keyboard.press("Enter");
    await expect(corner).toHaveCount(0);
    await rows.first().getByRole("button", { name: "Move and scale" }).click();
    expect(await leftOf()).toBe(left + 20);
    await page.keyboard.press("Shift+ArrowDown");
    await page.keyboard.press("Escape");
    await page.keyboard.press("Control+z");
    await rows.first().getByRole("button", { name: "Move and scale" }).click();
    expect(await leftOf()).toBe(left);
    // The handle in the middle is clicked, and the page goes along until the next click; Escape puts it back.
    const middle = page.getByRole("button", { name: "The whole page" });
    const whole = (await middle.boundingBox())!;
    const [x, y] = [whole.x + whole.width / 2, whole.y + whole.height / 2];
    await middle.click();
    await page.mouse.move(x + 60, y);
    await expect.poll(leftOf).toBeGreaterThan(left + 10);
    await page.keyboard.press("Escape");
    await expect.poll(leftOf).toBe(left);
    await middle.click();
    await page.mouse.click(x + 60, y);
    const there = await leftOf();
    expect(there).toBeGreaterThan(left + 10);
    await page.mouse.move(x, y);
    expect(await leftOf()).toBe(there);
    await page.keyboard.press("Escape");
    await expect(rows.last().getByText("45\u00a0%")).toBeVisible();
  },
);

story("files that hold no printed page are told in one sentence each", async ({ program }) => {
  const { page, folder } = program;
  const whole = await pdf(1);
  const files: Readonly<Record<string, Buffer>> = {
    "locked.pdf": await pdf(1, "secret"),
    "cut.pdf": whole.subarray(0, 200),
    "empty.pdf": Buffer.alloc(0),
    "notes.pdf": Buffer.from("Just words."),
    "cut.jpg": photograph().jpeg.subarray(0, 300),
    "scan.tif.png": Buffer.from("II*\0 and more"),
  };
  for (const [name, bytes] of Object.entries(files)) writeFileSync(join(folder, name), bytes);
  await begin(page);
  const dialog = await give(page, ...Object.keys(files).map((name) => join(folder, name)));
  for (const words of [
    "locked with a password",
    "The PDF is damaged or was cut off.",
    "The file is empty.",
    "This is a file of another kind; printed pages come as PDF, PNG, JPEG or WebP.",
    "The picture is damaged or was cut off.",
    "This is a TIFF picture; printed pages come as",
  ]) {
    await expect(dialog.getByText(words)).toBeVisible();
  }
  await expect(dialog.getByRole("button", { name: "Choose pages" })).toBeDisabled();
  await page.keyboard.press("Escape");
  await expect(dialog).toHaveCount(0);
});
