import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium, type Page } from "@playwright/test";
import { openSample, positionOf, throwTo } from "./acts.ts";
import { exerciseFile } from "./exerciseFile.ts";
import { openLoopback } from "./loopbackHost.ts";
import { chromiumProgram, ROOT } from "./machine.ts";
import { entryText, planted } from "./planted.ts";
import { openView } from "./views.ts";

/*
 * Pictures of every view of the built page, light and dark, in the two sizes that screens have most, to be looked at:
 *
 *     npm run build && npm run shots
 *
 * They come to `out/shots`. Nothing is compared: whoever changed a view looks at it.
 */

const FOLDER = join(ROOT, "out", "shots");
const SIZES = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
] as const;
/** What a worker may take to find a probe order, milliseconds. */
const ORDER_MS = 30_000;

type Shoot = (name: string) => Promise<void>;

/** Two rows of a vehicle with a broken wire are read, then suspects and readings are looked at, and all is undone. */
async function shootReadings(page: Page, shoot: Shoot): Promise<void> {
  const vehicle = planted("1-roof-vents", "rear-open-own", "W43:open");
  const field = page.locator(".reading-field input");
  for (let rows = 0; rows < 2; rows++) {
    const row = vehicle.next();
    if (!row) break;
    await field.fill(entryText(row.shows));
    if (rows === 1) await shoot("reading");
    await page.keyboard.press("Enter");
    await page.locator(".is-old").first().waitFor({ state: "detached", timeout: ORDER_MS });
    await page.waitForTimeout(2_000);
  }
  await openView(page, "Suspects");
  await page.locator(".suspect.is-leader .suspect-head").click();
  await page.waitForTimeout(500);
  await shoot("suspects");
  await page.locator(".suspect.is-leader .suspect-head").click();
  await openView(page, "Readings");
  await shoot("readings");
  await openView(page, "Probe order");
  for (let rows = 0; rows < 2; rows++) await page.keyboard.press("Control+z");
  await page.waitForTimeout(2_000);
}

/** A learner's bench: begun, what can be done at a point, a reading on the drawing, and the verdict. */
async function shootExercise(page: Page, folder: string, shoot: Shoot): Promise<void> {
  const told = { told: "since the wash", hints: { count: 2, minutes: 5 } };
  const file = await exerciseFile(folder, "4-horn", "low-horn", "W15:open", told);
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), page.keyboard.press("Control+o")]);
  await chooser.setFiles(file);
  await page.locator(".learner-head").waitFor();
  const type = async (text: string): Promise<void> => {
    await page.getByRole("textbox", { name: "Type what you do" }).fill(text);
    await page.keyboard.press("Enter");
    await page.waitForTimeout(400);
  };
  for (const text of ["try low-horn", "open bumper", "probe X11-1", "unplug X11"]) await type(text);
  await shoot("exercise");
  await page.getByRole("application").focus();
  for (const key of ["Home", "Enter"]) await page.keyboard.press(key);
  await shoot("exercise-act");
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Verdict" }).click();
  await page.getByRole("combobox", { name: /^What is faulty/ }).fill("W15");
  await shoot("exercise-verdict");
  await page.getByRole("button", { name: "back to the library" }).click();
}

/** Some pages of the help, what the program is, and the report of a fault of its own. */
async function shootHelp(page: Page, shoot: Shoot): Promise<void> {
  await page.keyboard.press("F1");
  const help = page.getByRole("dialog", { name: "Help", exact: true });
  await help.waitFor();
  await shoot("help");
  for (const [words, name] of [
    ["Symbols of parts", "help-symbols"],
    ["Lines and signs", "help-states"],
    ["Before you probe", "help-before"],
    ["About Wirefathom", "help-about"],
  ] as const) {
    await help.getByRole("navigation").getByRole("button", { name: words }).click();
    await page.waitForTimeout(300);
    await shoot(name);
  }
  await page.keyboard.press("Escape");
  await page.evaluate(`setTimeout(() => { throw new Error("on purpose"); }); undefined`);
  await page.getByRole("button", { name: "Show the report" }).waitFor();
  await shoot("fault-notice");
  await page.getByRole("button", { name: "Show the report" }).click();
  await page.getByRole("dialog", { name: "Report of a fault" }).waitFor();
  await shoot("fault-report");
  await page.keyboard.press("Escape");
}

/** What is done and shot in one window, from the first start on. */
async function tour(page: Page, shoot: Shoot): Promise<void> {
  await page.locator(".tile svg").last().waitFor();
  await shoot("first-start");
  await openSample(page, "Roof vents");
  await throwTo(page, "S1", "on");
  await shoot("bench");
  await shootHelp(page, shoot);
  await openView(page, "Probe order");
  await page.getByRole("button", { name: "Rear vent opens from its own switch" }).click();
  await page.locator(".step").first().waitFor({ timeout: ORDER_MS });
  await positionOf(page, "S6", "open").click();
  await shoot("probe-order");
  await shootReadings(page, shoot);
  await page.getByRole("application").focus();
  await page.keyboard.press("Home");
  for (let steps = 0; steps < 3; steps++) await page.keyboard.press("ArrowRight");
  await page.getByRole("tooltip").waitFor();
  await shoot("why");
  await page.keyboard.press("ContextMenu");
  await shoot("menu");
  await page.keyboard.press("Escape");
  for (const view of [
    "Straight branch",
    "What works",
    "Fault cupboard",
    "Position table",
    "Condition",
    "List",
    "Circuit",
    "Printed pages",
  ]) {
    await openView(page, view);
    await page.waitForTimeout(1_500);
    await shoot(view.toLowerCase().replace(" ", "-"));
  }
  await openView(page, "Class");
  await page.waitForTimeout(500);
  await shoot("class-view");
  await page.keyboard.press("F5");
  await page.locator(".wall-sheet svg").waitFor();
  await shoot("class");
  await page.keyboard.press("q");
  await shoot("class-question");
  for (const key of ["1", "Enter"]) await page.keyboard.press(key);
  await shoot("class-answer");
  await page.keyboard.press("Escape");
  // A sample on which nothing was drawn is gone once it is closed.
  await page.getByRole("application").focus();
  await page.keyboard.press("PageDown");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Control+f");
  await page.keyboard.type("S6");
  await page.keyboard.press("Enter");
  await page.getByRole("toolbar", { name: "What is chosen" }).getByRole("button", { name: "Edit" }).click();
  await shoot("editor");
  await page.getByRole("button", { name: "Done" }).click();
  await openView(page, "Faults");
  await page.getByRole("combobox", { name: /What is faulty/ }).fill("W46");
  await page.keyboard.press("Enter");
  await shoot("fault");
  await page.getByRole("button", { name: "Add a part" }).click();
  await shoot("catalogue");
  await page.keyboard.press("Escape");
  await page.keyboard.press("Control+p");
  await page.locator(".print-page").first().waitFor();
  await shoot("print");
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "back to the library" }).click();
  await page.locator(".entry").waitFor();
  await shoot("library");
}

const program = chromiumProgram();
if (program === null) throw new Error("There is no Chromium on this machine: apt-get install chromium");
mkdirSync(FOLDER, { recursive: true });
const browser = await chromium.launch({ executablePath: program });
for (const viewport of SIZES) {
  for (const colorScheme of ["light", "dark"] as const) {
    const library = mkdtempSync(join(tmpdir(), "wirefathom-shots-"));
    const context = await browser.newContext({ viewport, colorScheme });
    const opened = await openLoopback(context, library, null);
    const shoot: Shoot = async (name) => {
      await opened.page.waitForTimeout(400);
      await opened.page.screenshot({ path: join(FOLDER, `${name}-${colorScheme}-${viewport.width}.png`) });
    };
    await tour(opened.page, shoot);
    await shootExercise(opened.page, library, shoot);
    await opened.close();
    await context.close();
    rmSync(library, { recursive: true, force: true });
  }
}
await browser.close();
