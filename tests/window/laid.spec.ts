import type { Page } from "@playwright/test";
import { openSample, throwTo } from "./acts.ts";
import { expect, story } from "./story.ts";

story("what is laid down anew in pieces is what a whole drawing would be", async ({ program }) => {
  const { page } = program;
  await page.emulateMedia({ reducedMotion: "reduce" });
  await openSample(page, "Roof vents");
  const drawing = page.getByRole("application");
  await drawing.focus();
  await page.keyboard.press("Control+Equal");
  await page.keyboard.press("Control+Equal");
  await throwTo(page, "S1", "on");
  await expectWhole(page);

  const box = (await drawing.boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down({ button: "middle" });
  await page.mouse.move(box.x + box.width / 2 - 137, box.y + box.height / 2 - 61, { steps: 5 });
  await page.mouse.move(box.x + box.width / 2 + 90, box.y + box.height / 2 - 10, { steps: 5 });
  await page.mouse.up({ button: "middle" });
  await expectWhole(page);
});

/** How far a channel may be off, of 255: where a piece is cut the painter rounds the edges of slanting lines otherwise. */
const ROUNDED = 64;

/** The drawing's layer is the same once all of it is laid down anew, as another size of the window makes it. */
async function expectWhole(page: Page): Promise<void> {
  await page.waitForTimeout(400);
  const inPieces = await page.evaluateHandle(onWhite);
  const size = page.viewportSize()!;
  await page.setViewportSize({ ...size, height: size.height + 40 });
  await page.waitForTimeout(200);
  await page.setViewportSize(size);
  await page.waitForTimeout(200);
  const whole = await page.evaluateHandle(onWhite);
  const others = await page.evaluate(
    ([one, other, rounded]) =>
      one.length === other.length && one.filter((value, index) => Math.abs(value - other[index]!) > rounded).length,
    [inPieces, whole, ROUNDED] as const,
  );
  expect(others).toBe(0);
}

/** Runs in the page: red, green and blue of every pixel of the drawing's layer on white paper. */
function onWhite(): Float32Array {
  const canvas = document.querySelectorAll<HTMLCanvasElement>(".sheet-layers canvas")[2]!;
  const { data } = canvas.getContext("2d")!.getImageData(0, 0, canvas.width, canvas.height);
  return Float32Array.from({ length: (data.length / 4) * 3 }, (_, index) => {
    const at = Math.floor(index / 3) * 4;
    const cover = data[at + 3]! / 255;
    return data[at + (index % 3)]! * cover + 255 * (1 - cover);
  });
}
