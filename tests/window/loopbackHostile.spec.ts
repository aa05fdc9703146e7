import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "@playwright/test";
import { formatCircuit } from "../../schemas/circuit.ts";
import { HOSTILE_PDFS } from "../fuzz/doors/pictures.ts";
import { SCRIPTED, withWords } from "../hostile.ts";
import { run } from "../terminal/run.ts";
import { ROOT } from "./machine.ts";
import { begin, give } from "./paperInSight.ts";
import { expect, story } from "./story.ts";
import { fromDisk } from "./takehome.ts";
import { openView } from "./views.ts";

/** What a script that ran leaves behind. */
const hit = (page: Page): Promise<unknown> => page.evaluate(() => Reflect.get(window, "hit"));

/** A file from the disk in a browser of its own, which lets every script run that its policy does not forbid. */
async function opened(browser: Browser, file: string): Promise<Page> {
  const page = await (await browser.newContext({ offline: true })).newPage();
  await page.goto(pathToFileURL(file).href);
  return page;
}

story(
  "words that are markup run nowhere: not in a view, a preview, on the wall, in a sheet or at home",
  async ({ program, browser }) => {
    const { folder, page } = program;
    const control = await browser.newPage();
    await control.setContent(SCRIPTED);
    await expect.poll(() => hit(control)).toBe(1);
    await control.close();

    const text = readFileSync(join(ROOT, "samples", "4-horn.circuit.json"), "utf8");
    const file = join(folder, "scripted.circuit.json");
    writeFileSync(file, formatCircuit(withWords(text, SCRIPTED).circuit));
    await program.chooses(file, () => page.getByRole("button", { name: "Open a file" }).click());
    await expect(page.getByRole("application")).toBeVisible();
    await expect(page).toHaveTitle(/<script>window\.hit=1<\/script>/);

    const views = page.getByRole("navigation", { name: "Views" });
    await views.getByRole("button", { name: "More views" }).click();
    const names = await views.getByRole("button").allTextContents();
    await page.keyboard.press("Escape");
    const seen = names.map((name) => name.replace(/[\d\s]+$/, "").trim()).filter((name) => name.length > 3);
    expect(seen.length).toBeGreaterThan(10);
    for (const name of seen) {
      await openView(page, name);
      expect(await hit(page), name).toBeUndefined();
    }
    await openView(page, "Class");
    const [wall] = await Promise.all([
      page.context().waitForEvent("page"),
      page.getByRole("button", { name: "Open a class window" }).click(),
    ]);
    await expect(wall.getByText("<script>").first()).toBeVisible();
    expect(await hit(wall)).toBeUndefined();
    await wall.close();

    await openView(page, "Condition");
    const home = await program.saved(() => page.getByRole("button", { name: /^Take-home page/ }).click());
    await page.keyboard.press("Control+p");
    await expect(page.getByRole("button", { name: "Save as PDF" })).toBeEnabled();
    expect(await hit(page)).toBeUndefined();
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: "back to the library" }).click();
    await expect(page.getByText("<script>").first()).toBeVisible();
    expect(await hit(page)).toBeUndefined();

    const homeFile = join(folder, "home.html");
    writeFileSync(homeFile, home.bytes);
    const atHome = await fromDisk(browser, homeFile);
    await expect(atHome.page.getByText("<script>").first()).toBeVisible();
    expect([await hit(atHome.page), atHome.faults]).toEqual([undefined, []]);
    for (const [what, ending] of [
      ["sheet", "html"],
      ["sheet", "svg"],
      ["checklist", "html"],
    ] as const) {
      const out = join(folder, `${what}.${ending}`);
      expect(await run("print", file, "--what", what, "--complaint", "low-horn", "--out", out)).toMatchObject({
        code: 0,
      });
      const printed = await opened(browser, out);
      await expect(printed.locator("svg").first()).toBeVisible();
      expect(await hit(printed), `${what}.${ending}`).toBeUndefined();
      await printed.context().close();
    }
  },
);

story(
  "a PDF that brings scripts, programs to launch or pages without end is read or refused, and nothing of it runs",
  async ({ program }) => {
    const { page, folder } = program;
    const asked: string[] = [];
    page.on("dialog", (dialog) => {
      asked.push(dialog.message());
      void dialog.dismiss();
    });
    await begin(page);
    for (const name of ["script", "link", "huge"]) {
      const file = join(folder, `${name}.pdf`);
      writeFileSync(file, HOSTILE_PDFS[name]!);
      const dialog = await give(page, file);
      await dialog.getByRole("button", { name: "Bring in 1 page" }).click();
      await expect(page.getByRole("textbox", { name: `Title of ${name}.pdf` })).toBeVisible();
    }
    const names = ["circle", "many"];
    for (const name of names) writeFileSync(join(folder, `${name}.pdf`), HOSTILE_PDFS[name]!);
    writeFileSync(
      join(folder, "drawing.png"),
      `<svg xmlns="http://www.w3.org/2000/svg"><script>window.hit=1</script></svg>`,
    );
    const dialog = await give(
      page,
      ...[...names.map((name) => `${name}.pdf`), "drawing.png"].map((name) => join(folder, name)),
    );
    await expect(dialog.getByText("This is a file of another kind; printed pages come as").first()).toBeVisible();
    expect([asked, await hit(page), page.context().pages().length]).toEqual([[], undefined, 1]);
  },
);
