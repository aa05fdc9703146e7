import type { Page } from "@playwright/test";

/** Hues of wire states in the light look, as the style sheet has them. */
export const HUES = { powered: [0xb8, 0x46, 0x00], grounded: [0x00, 0x6a, 0xd1] } as const;

/** How many pixels of the drawing have a hue, to within a few steps of each channel. */
export function pixelsOf(page: Page, hue: readonly [number, number, number]): Promise<number> {
  return page.evaluate((wanted) => {
    let count = 0;
    for (const canvas of document.querySelectorAll<HTMLCanvasElement>(".sheet-layers canvas")) {
      const { data } = canvas.getContext("2d")!.getImageData(0, 0, canvas.width, canvas.height);
      for (let at = 0; at < data.length; at += 4) {
        const isHue = wanted.every((channel, index) => Math.abs(data[at + index]! - channel) <= 6);
        if (isHue && data[at + 3]! > 250) count++;
      }
    }
    return count;
  }, hue);
}
