import { axeFinds } from "./axe.ts";
import { everyView } from "./everyView.ts";
import { badlyFocused, beyondTheEdge, setApart } from "./inPage.ts";
import { expect, story } from "./story.ts";

/** Views that no other story has the checker for accessibility look at. */
const UNCHECKED = ["hand-ins", "Instruments", "find", "class wall", "export", "learner's Verdict"];

story(
  "in every view the keys show where they are, nothing lies over that, and words set apart find room",
  async ({ program }) => {
    story.slow();
    const { page, folder } = program;
    const all: string[] = [];
    await everyView(page, folder, async (where) => {
      // What had the keys by a press of the mouse need not show it.
      await page.keyboard.press("Shift");
      all.push(...(await page.evaluate(badlyFocused)).map((found) => `${where}: ${found}`));
      await page.evaluate(setApart, true);
      all.push(...(await page.evaluate(beyondTheEdge)).map((found) => `${where}, words apart: ${found}`));
      await page.evaluate(setApart, false);
      if (UNCHECKED.includes(where)) all.push(...(await axeFinds(page, where)));
      expect(await page.title()).toMatch(/Wirefathom$/);
      expect(await page.evaluate(() => document.documentElement.lang)).toBe("en");
    });
    expect(all).toEqual([]);
  },
);

story("enlarged four times over, nothing but drawings reaches beyond the edge, in any view", async ({ program }) => {
  story.slow();
  const { page, folder } = program;
  await page.setViewportSize({ width: 320, height: 640 });
  const all: string[] = [];
  await everyView(page, folder, async (where) => {
    all.push(...(await page.evaluate(beyondTheEdge)).map((found) => `${where}: ${found}`));
  });
  expect(all).toEqual([]);
});
