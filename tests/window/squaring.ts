import type { Locator, Page } from "@playwright/test";
import type { Corner, Quad } from "../../core/drawing/projection.ts";
import type { Photographed } from "./photographed.ts";

/** The four handles of a printed page, in the order of corners. */
const NAMES = ["Top left", "Top right", "Bottom right", "Bottom left"];

/** Drags the four handles of a photograph onto the corners of the paper in it, by the mouse. */
export async function dragOntoPaper(page: Page, { width, height, corners }: Photographed): Promise<void> {
  // Before they are moved they stand at the corners of the photograph.
  const handles = await handlesAt(page);
  const [[left, top], , [right, bottom]] = handles;
  for (const [index, [fromX, fromY]] of handles.entries()) {
    const [x, y] = corners[index]!;
    const [toX, toY] = [left + (right - left) * (x / width), top + (bottom - top) * (y / height)];
    await page.mouse.move(fromX, fromY);
    await page.mouse.down();
    await page.mouse.move((fromX + toX) / 2, (fromY + toY) / 2);
    await page.mouse.move(toX, toY);
    await page.mouse.up();
  }
}

/** Where on the screen the handles of the printed page stand that is taken up. */
export async function handlesAt(page: Page): Promise<Quad> {
  const at = NAMES.map((name) => centreOf(page.getByRole("button", { name: new RegExp(`^${name} corner`) })));
  return (await Promise.all(at)) as unknown as Quad;
}

async function centreOf(handle: Locator): Promise<Corner> {
  const { x, y, width, height } = (await handle.boundingBox())!;
  return [x + width / 2, y + height / 2];
}
