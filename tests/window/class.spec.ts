import type { Locator, Page } from "@playwright/test";
import { openSample, throwTo } from "./acts.ts";
import { axeFinds } from "./axe.ts";
import { expect, type Program, story } from "./story.ts";
import { openView } from "./views.ts";

/** The class window that opens by what is done meanwhile. */
async function classWindow({ app, page }: Program, act: () => Promise<void>): Promise<Page> {
  const opening = app ? app.waitForEvent("window") : page.context().waitForEvent("page");
  const [opened] = await Promise.all([opening, act()]);
  await expect(opened).toHaveTitle("Class view – Wirefathom");
  return opened;
}

const heading = (page: Page) => page.getByRole("heading", { level: 1 });
const strip = (page: Page) => page.getByRole("region", { name: "In words" });

story("a class sees the drawing in a window of its own, which follows", { tag: "@both" }, async ({ program }) => {
  const { page } = program;
  await openSample(page, "A reversing motor");
  await openView(page, "Class");
  const wall = await classWindow(program, () => page.getByRole("button", { name: "Open a class window" }).click());
  await expect(strip(wall)).toContainText("0.0 V on both sides of M1: no current.");
  await throwTo(page, "S1", "up");
  await expect(heading(wall)).toHaveText("Held up");
  await expect(strip(wall)).toContainText("M1 runs forward");
  // The class window has the keys of its own, and drives the same bench.
  await wall.keyboard.press("ArrowRight");
  await expect(page.getByRole("region", { name: "Shown now" })).toContainText("Held down");
  await expect(strip(wall)).toContainText("M1 runs in reverse");
  await wall.keyboard.press("b");
  await expect(heading(wall)).toBeHidden();
  await expect(page.getByRole("heading", { name: "The class sees a blank screen" })).toBeVisible();
  await page.getByRole("button", { name: "Blank" }).click();
  await expect(heading(wall)).toHaveText("Held down");
  expect(await axeFinds(wall, "class window")).toEqual([]);
  expect(await axeFinds(page, "class view of the instructor")).toEqual([]);
  // What the instructor sees of the next scene, and of faults, never reaches the class.
  await expect(page.getByRole("region", { name: "Next scene" })).toContainText("Up, door joint apart");
  expect(await wall.content()).not.toContain("door joint apart");
  // It closes before the key is up.
  await wall.keyboard.press("Escape").catch(() => {});
  await expect(page.getByRole("heading", { name: "The class sees nothing yet" })).toBeVisible();
});

/** How often what flashes on the wall is lit or goes dark in so many milliseconds. */
function changes(wall: Locator, ms: number): Promise<number> {
  return wall
    .locator(".wall-sheet")
    .first()
    .evaluate((lit, ms) => {
      let count = 0;
      const watch = new MutationObserver(() => {
        count += 1;
      });
      watch.observe(lit, { attributes: true, attributeFilter: ["hidden"] });
      return new Promise<number>((resolve) => setTimeout(() => resolve(count), ms));
    }, ms);
}

story("on one screen the class view fills it, by keys alone, and flashes slowly or not at all", async ({ program }) => {
  const { page } = program;
  await openSample(page, "Trailer lamps");
  await page.keyboard.press("F5");
  const wall = page.getByRole("dialog", { name: "Class view" });
  const title = wall.getByRole("heading", { level: 1 });
  await expect(title).toHaveText("At rest, key off");
  await page.keyboard.press("PageDown");
  await expect(title).toHaveText("Left turn");
  // Three flashes a second are six changes, and one may be cut at each end.
  const count = await changes(wall, 1_000);
  expect(count).toBeGreaterThan(1);
  expect(count).toBeLessThanOrEqual(7);
  await page.emulateMedia({ reducedMotion: "reduce" });
  await page.waitForTimeout(50);
  expect(await changes(wall, 500)).toBe(0);
  const height = (): Promise<number> =>
    wall.getByRole("heading", { level: 2 }).evaluate((words) => Number.parseFloat(getComputedStyle(words).fontSize));
  expect(await height()).toBeCloseTo((48 * 800) / 1080, 0);
  await page.keyboard.press("+");
  await expect.poll(height).toBeCloseTo((56 * 800) / 1080, 0);
  await page.keyboard.press("-");
  await page.keyboard.press("b");
  await expect(title).toBeHidden();
  await page.keyboard.press("b");
  expect(await axeFinds(page, "over the whole screen")).toEqual([]);
  // A finger throws what is in focus; the keys stay those of the class view.
  await wall.getByRole("button", { name: "Next scene" }).click();
  await expect(title).toHaveText("Hazards, key off");
  await page.keyboard.press("q");
  const answers = wall.getByRole("region", { name: "Answers" });
  await page.keyboard.press("1");
  await expect(answers).toContainText("1 answered.");
  await page.keyboard.press("Enter");
  await expect(answers).toContainText(", right");
  await page.keyboard.press("Enter");
  await expect(answers).toBeHidden();
  await page.keyboard.press("Escape");
  await expect(wall).toBeHidden();
  await expect(page.getByRole("main")).toBeVisible();
});

story(
  "a class says what a wire is before it is shown, by hands counted here and by keys there",
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "A reversing motor");
    await openView(page, "Class");
    const wall = await classWindow(program, () => page.getByRole("button", { name: "Open a class window" }).click());
    await throwTo(page, "S1", "up");
    await page.getByText("Cover the states up").click();
    await expect(heading(wall)).toHaveText("S1 held up");
    await expect(strip(wall)).toContainText("Say each wire's state before it is shown.");
    await page.getByRole("combobox", { name: "Or ask about a point" }).selectOption("X1-5");
    await page.getByRole("button", { name: "Ask its state" }).click();
    await expect(heading(wall)).toHaveText(
      "S1 held up. What is X1-5 (wire W10, VT/GY): powered, grounded, between or floating?",
    );
    const answers = wall.getByRole("region", { name: "Answers" });
    await expect(answers.getByRole("listitem")).toHaveText(["1 powered", "2 grounded", "3 between", "4 floating"]);
    await expect(page.getByRole("button", { name: "Show the answer" })).toBeDisabled();
    await page.getByRole("button", { name: "powered 0 hands" }).click();
    await wall.keyboard.press("2");
    await wall.keyboard.press("2");
    await wall.keyboard.press("4");
    await wall.keyboard.press("Backspace");
    await expect(answers).toContainText("3 answered.");
    expect(await wall.content()).not.toMatch(/right|#006AD1|#B84600/);
    await wall.keyboard.press("Enter");
    await expect(answers.getByRole("listitem")).toHaveText([
      "1 powered1",
      "2 grounded, right2",
      "3 between0",
      "4 floating0",
    ]);
    await expect(page.getByText("2 of 3 right.")).toBeVisible();
    expect(await axeFinds(wall, "question shown")).toEqual([]);
    expect(await axeFinds(page, "question of the instructor")).toEqual([]);
    await page.getByRole("button", { name: "Ask next" }).click();
    await expect(answers).toContainText("Say it before it is shown.");
    await page.getByRole("button", { name: "Leave it" }).click();
    await expect(answers).toBeHidden();
  },
);

story("a class window whose instructor is gone says so, and goes on with the next", async ({ program }) => {
  const { page } = program;
  await openSample(page, "A reversing motor");
  await openView(page, "Class");
  const wall = await classWindow(program, () => page.getByRole("button", { name: "Open a class window" }).click());
  await throwTo(page, "S1", "up");
  await expect(heading(wall)).toHaveText("Held up");
  await page.reload();
  await throwTo(page, "S1", "down");
  await expect(heading(wall)).toHaveText("Held down");
  await program.restart();
  await expect(wall.getByRole("alert")).toContainText("The instructor's window was closed");
  await wall.close();
});
