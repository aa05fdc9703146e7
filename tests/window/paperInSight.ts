import type { Locator, Page } from "@playwright/test";
import { expect } from "./story.ts";
import { openView } from "./views.ts";

/** The red of the fields on the pages that stories bring in. */
export const RED = [200, 20, 20] as const;

/** The box round all pixels of the printed pages that are near a colour, in pixels of the drawing, and how many there are. */
export async function boxOf(page: Page, colour: readonly [number, number, number], most = 70) {
  await page.locator(".sheet-layers canvas").first().waitFor();
  return page.evaluate(
    ([wanted, most]) => {
      const canvas = document.querySelector<HTMLCanvasElement>(".sheet-layers canvas")!;
      const { width, height } = canvas;
      const { data } = canvas.getContext("2d")!.getImageData(0, 0, width, height);
      const box = { left: width, top: height, right: 0, bottom: 0, count: 0 };
      for (let at = 0; at < data.length; at += 4) {
        if (data[at + 3]! < 100 || wanted.some((channel, index) => Math.abs(data[at + index]! - channel) > most))
          continue;
        const [x, y] = [(at / 4) % width, Math.floor(at / 4 / width)];
        box.left = Math.min(box.left, x);
        box.right = Math.max(box.right, x);
        box.top = Math.min(box.top, y);
        box.bottom = Math.max(box.bottom, y);
        box.count++;
      }
      return box;
    },
    [colour, most] as const,
  );
}

/** A new circuit with the view of its printed pages. */
export async function begin(page: Page): Promise<void> {
  await page.getByRole("button", { name: "New circuit" }).first().click();
  await openView(page, "Printed pages");
  await expect(page.getByText("No printed page lies under this page")).toBeVisible();
}

/** Gives files to the field that bringing in opens; it is the page's own in both hosts. */
export async function give(page: Page, ...files: readonly string[]): Promise<Locator> {
  const [field] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Bring in printed pages" }).click(),
  ]);
  await field.setFiles([...files]);
  return page.getByRole("dialog", { name: "Printed pages to bring in" });
}
