import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { exerciseFor } from "../../core/lesson/exercise.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import { exercisePage, TAKE_HOME, takeHomeParts } from "../../electron/print/takeHome.ts";
import { formatExercise, openForInstructor, readExercise } from "../../schemas/exercise.ts";
import { checkedHandin, readHandin } from "../../schemas/handin.ts";
import { ROUNDS_LIMITS } from "../../schemas/seal.ts";
import { got, VENTS } from "../edit/given.ts";
import { ROOT } from "./machine.ts";
import { expect, story } from "./story.ts";
import { findings, fromDisk } from "./takehome.ts";

const SAMPLE = join(ROOT, "samples", "10-power-and-ground.1.exercise.json");

/** The file of an exercise on sample 1, the largest that a page must hold. */
async function ventsText(): Promise<string> {
  const [check] = VENTS.checks;
  const fault = got(plantOf(VENTS, "W18:open"));
  const exercise = got(exerciseFor(VENTS, { check: VENTS.checks.find(({ load }) => load === "M3") ?? check!, fault }));
  const hidden = { fault: fault.id, seed: null, note: "" };
  return got(await formatExercise(exercise, hidden, "lesson board", ROUNDS_LIMITS.least));
}

/** What has the keys, where it is covered up whole by something else; null where some of it is seen. */
function hiddenFocus(): string | null {
  const held = document.activeElement;
  if (!held || held === document.body) return null;
  const { left, right, top, bottom } = held.getBoundingClientRect();
  const seen = [0.1, 0.5, 0.9].some((share) => {
    const on = document.elementFromPoint((left + right) / 2, top + (bottom - top) * share);
    return on !== null && (held.contains(on) || on.contains(held));
  });
  return seen ? null : held.outerHTML.slice(0, 120);
}

story(
  "an exercise is worked on in one file with the network off: nothing of it shows the fault before the verdict",
  async ({ browser }, about) => {
    const text = readFileSync(SAMPLE, "utf8");
    const opened = got(await openForInstructor(got(readExercise(text)), "lesson board"));
    const secrets = [opened.hidden.fault, "X2-1 backed out", opened.hidden.note];
    const file = about.outputPath("exercise.html");
    const parts = got(await takeHomeParts(join(ROOT, TAKE_HOME), "exercise"));
    const html = exercisePage(opened.exercise.title, text, parts);
    writeFileSync(file, html);
    expect(Buffer.byteLength(html)).toBeLessThan(600_000);
    for (const secret of secrets) expect(html).not.toContain(secret);
    expect(Buffer.byteLength(exercisePage("", await ventsText(), parts))).toBeLessThan(600_000);

    const { page, asked, faults } = await fromDisk(browser, file);
    const type = async (typed: string): Promise<void> => {
      await page.getByRole("textbox", { name: "Type what you do" }).fill(typed);
      await page.keyboard.press("Enter");
    };
    const last = page.getByRole("region", { name: "Complaint" }).getByRole("status");
    await type("probe E2.2 @ S2=on");
    await expect(last).toContainText("12.6");
    await page.getByLabel("At", { exact: true }).selectOption("part S1");
    await page.getByRole("button", { name: /^Set S1 to on/ }).click();
    await expect(last).toContainText("E1 on");
    await type("probe E9.1");
    await expect(page.getByText(/E9/)).toBeVisible();
    const held = await page.evaluate(() => document.documentElement.outerHTML + JSON.stringify({ ...localStorage }));
    for (const secret of secrets) expect(held).not.toContain(secret);
    expect(await findings(page)).toEqual([]);

    // Enlarged to a phone, nothing scrolls sideways, and what has the keys never lies under the drawing.
    await page.setViewportSize({ width: 320, height: 844 });
    await expect(page.locator(".sheet .chosen *").first()).toBeAttached();
    // Backwards, since what comes into sight from above is what can come to lie there.
    await page.getByRole("button", { name: "Save your hand-in" }).focus();
    for (let press = 0; press < 20; press++) {
      await page.keyboard.press("Shift+Tab");
      expect(await page.evaluate(hiddenFocus)).toBeNull();
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
    await page.setViewportSize({ width: 1280, height: 800 });

    // Closed and opened again, it goes on where it was.
    await page.reload();
    const done = page.getByRole("region", { name: "Done so far" }).getByRole("listitem");
    await expect(done).toHaveCount(3);
    await page.getByLabel("What is wrong").fill("X2-1");
    await page.getByRole("button", { name: "File the verdict" }).click();
    await page.getByRole("button", { name: "Yes, file it" }).click();
    await expect(page.getByText("Right: X2-1 backed out of its place.")).toBeVisible();
    await page.getByLabel("Your name").fill("Ann");
    const saved = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save your hand-in" }).click();
    const handin = got(await readHandin(readFileSync((await (await saved).path())!)));
    expect(got(await checkedHandin(handin, opened))).toMatchObject({ learner: "Ann", route: { length: 4 } });
    expect(await findings(page)).toEqual([]);
    expect([...new Set(asked)].filter((url) => !url.startsWith("blob:"))).toEqual([pathToFileURL(file).href]);
    expect(faults).toEqual([]);
    await page.context().close();
  },
);
