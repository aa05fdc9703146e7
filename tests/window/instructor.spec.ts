import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "@playwright/test";
import { openSample } from "./acts.ts";
import { axeFinds } from "./axe.ts";
import { asLearner, exerciseText, handedIn } from "./handedIn.ts";
import { expect, type Program, story } from "./story.ts";
import { openView } from "./views.ts";

const PASSPHRASE = "green pear 7";

/** Presses a button as somebody without a pointer does. */
async function press(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole("button", { name, exact: true }).first().focus();
  await page.keyboard.press("Enter");
}

/** Puts files on the instructor's desk. */
async function put({ page, folder }: Program, files: Readonly<Record<string, string>>): Promise<void> {
  const paths = Object.entries(files).map(([name, text]) => {
    const path = join(folder, name);
    writeFileSync(path, text);
    return path;
  });
  const [asked] = await Promise.all([page.waitForEvent("filechooser"), press(page, "Open files")]);
  await asked.setFiles(paths);
}

async function axeInBoth(page: Page, where: string): Promise<readonly string[]> {
  const found: string[] = [];
  for (const colorScheme of ["dark", "light"] as const) {
    await page.emulateMedia({ colorScheme });
    found.push(...(await axeFinds(page, `${where}, ${colorScheme}`)));
  }
  return found;
}

story(
  "an instructor plants, tries, sends out, opens hand-ins, reads the table and replays one, by keys alone",
  async ({ program }) => {
    const { page } = program;
    await openSample(page, "Relay and clock spring");
    await openView(page, "Fault cupboard");

    // A drawn fault, tried on the drawing and taken out again.
    await page.getByRole("combobox", { name: "Behind which complaint" }).selectOption({ label: "Low horn sounds" });
    await expect(page.getByRole("button", { name: "Draw a fault" })).toBeVisible({ timeout: 20_000 });
    await press(page, "Draw a fault");
    const hand = page.getByRole("region", { name: "The fault in hand" });
    await expect(hand.getByText("Low horn sounds: dead")).toBeVisible();
    await press(page, "Try it on the drawing");
    await expect(page.getByText("Wires as they would be with")).toBeVisible();
    await press(page, "Take it out");
    await expect(page.getByText("Wires as they would be with")).toHaveCount(0);

    // A fault chosen by hand goes into an exercise; what is typed wrong is said, and stays.
    await page.getByRole("searchbox", { name: "Narrow the faults" }).fill("W15 broken");
    await press(page, /^W15 broken/);
    expect(await axeFinds(page, "fault cupboard")).toEqual([]);
    await press(page, "Make an exercise");
    await page.getByLabel("Title").fill("Silent horns");
    await page.getByLabel("Passphrase").fill(PASSPHRASE);
    await page.getByLabel("The same again").fill("green pear 8");
    await page.keyboard.press("Enter");
    await expect(page.getByRole("alert")).toContainText("not the same");
    await page.getByLabel("The same again").fill(PASSPHRASE);
    expect(await axeFinds(page, "exercise")).toEqual([]);
    const made = await program.saved(() => page.keyboard.press("Enter"));
    expect(made.name).toBe("Silent horns.exercise.json");
    const text = made.bytes.toString("utf8");
    expect(text).not.toContain("W15:open");

    // What a class hands in.
    const horns = await asLearner(text);
    const vents = await exerciseText({
      sample: "1-roof-vents",
      check: "middle-open-own",
      fault: "W13:open",
      title: "Roof vents",
      passphrase: "blue plum 9",
    });
    const lucky = await handedIn("Bo", horns, "throw S1=pressed", "verdict W15:open");
    await page.getByRole("button", { name: "Leave it" }).focus();
    await page.keyboard.press("Enter");
    await press(page, "Hand-ins");
    await expect(page.getByRole("heading", { name: "Hand-ins", level: 1 })).toBeFocused();
    await put(program, {
      "a.exercise.json": text,
      "b.exercise.json": vents,
      "anna.handin.json": await handedIn(
        "Anna",
        horns,
        "open fuse-box",
        "probe K1.30",
        "probe K1.30",
        "verdict F2:blown",
      ),
      "bo.handin.json": lucky,
      "cleo.handin.json": lucky.replace('"minutes": 0', '"minutes": 9'),
      "dan.handin.json": lucky.slice(0, 500),
      "eva.handin.json": await handedIn("Eva", await asLearner(vents), "verdict W13:open"),
    });
    const table = page.getByRole("table").first();
    const row = (name: string) => table.getByRole("row").filter({ has: page.getByRole("rowheader", { name }) });
    await expect(row("Anna")).toContainText("not open here");
    await page.getByLabel("Passphrase").fill("wrong words");
    await page.keyboard.press("Enter");
    await expect(page.getByRole("alert")).toContainText('"Silent horns"');
    await page.getByLabel("Passphrase").fill(PASSPHRASE);
    await page.keyboard.press("Enter");
    await expect(row("Anna")).toContainText("Wrong", { timeout: 20_000 });
    await expect(row("Bo")).toContainText("Right, not proven: lucky", { timeout: 20_000 });
    await expect(row("cleo")).toContainText("edited by hand");
    await expect(row("dan")).toContainText("damaged");
    await expect(row("Eva")).toContainText('"Roof vents"');
    await expect(page.getByRole("alert")).toContainText('"Roof vents"');
    await expect(page.getByRole("region", { name: "Exercises" })).toContainText("W15 broken");

    // The table is sorted, goes out for a spreadsheet and onto paper, and counts for the school's tasks.
    await press(page, "Minutes");
    await expect(table.getByRole("rowheader").first()).toHaveText("Bo");
    await press(page, "Minutes");
    await expect(table.getByRole("rowheader").first()).toHaveText("Anna");
    await page.getByRole("textbox", { name: /One task a line/ }).fill("Find an open feed: Silent horns");
    await page.keyboard.press("Tab");
    await expect(page.getByRole("region", { name: "Progress with the task list" })).toContainText("tried");
    const csv = await program.saved(() => press(page, "Save as CSV"));
    expect(csv.bytes.toString("utf8")).toMatch(/\r\nAnna,Silent horns,wrong,/);
    const pdf = await program.saved(() => press(page, "Print as PDF"));
    expect(pdf.bytes.subarray(0, 5).toString()).toBe("%PDF-");
    expect(await axeInBoth(page, "hand-ins")).toEqual([]);

    // A route, move by move: the reading stands where it was taken.
    await press(page, "Anna");
    await expect(page.getByRole("heading", { name: "Anna, Silent horns" })).toBeFocused();
    const drawing = page.getByRole("region", { name: "The drawing after this move" });
    await expect(drawing.locator("svg")).toBeVisible();
    await press(page, "Next move");
    await page.keyboard.press("Enter");
    await expect(drawing.locator("svg")).toContainText("1: 12.6V");
    await page.getByRole("slider", { name: "Move shown" }).focus();
    await page.keyboard.press("ArrowRight");
    await expect(page.getByRole("listitem").filter({ hasText: "Told nothing" })).toContainText("3");
    await expect(drawing.locator("svg")).toContainText("2: 12.6V (2)");
    await page.keyboard.press("Home");
    await press(page, "Play");
    await expect(page.getByText("1 of 4")).toBeVisible({ timeout: 5_000 });
    await press(page, "Pause");
    expect(await axeFinds(page, "route")).toEqual([]);
    await press(page, "The class");
    await expect(page.getByRole("button", { name: "Anna", exact: true })).toBeFocused();

    // What lies on the desk is there when one comes back.
    await press(page, "Back");
    await expect(page.getByRole("application")).toBeVisible();
    await press(page, "Hand-ins");
    await expect(row("Bo")).toContainText("lucky");
  },
);
