import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, expect, type Page, test } from "@playwright/test";
import { startPostgres, type TestServer } from "../postgres/server.ts";
import { openLoopback } from "./loopbackHost.ts";
import { ROOT } from "./machine.ts";
import type { OpenProgram } from "./opened.ts";
import { openView } from "./views.ts";

const HORN = join(ROOT, "samples", "4-horn.circuit.json");

/** A bench in the shop: a program and a browser of its own, on the library that all share. */
interface Bench {
  readonly page: Page;
  kill(): Promise<void>;
  close(): Promise<void>;
}

async function benchOf(browser: Browser, person: string, library: string, file: string | null): Promise<Bench> {
  const folder = mkdtempSync(join(tmpdir(), "wirefathom-story-"));
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const env = { WIREFATHOM_LIBRARY: library, WIREFATHOM_PERSON: person };
  const program: OpenProgram = await openLoopback(context, folder, file, env);
  await program.page.locator("#app > *").first().waitFor();
  const gone = async (ended: Promise<void>): Promise<void> => {
    await ended;
    await context.close();
    rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
  };
  return { page: program.page, kill: () => gone(program.kill()), close: () => gone(program.close()) };
}

const notes = (page: Page) => page.getByRole("region", { name: "Notes" });

/** Gives the circuit on the bench another title. */
async function retitle(page: Page, title: string): Promise<void> {
  await page.getByLabel("Title", { exact: true }).fill(title);
  await page.keyboard.press("Enter");
  await expect(page).toHaveTitle(`${title} – Wirefathom`);
}

let server: TestServer;
test.beforeAll(async () => {
  server = await startPostgres();
});
test.afterAll(() => server.close());

/** The benches of two people on a fresh shared library, with the same circuit open on both. */
async function bothAtTheHorn(browser: Browser) {
  const library = server.newDatabase();
  const ann = await benchOf(browser, "ann", library, HORN);
  await expect(ann.page).toHaveTitle(/Horn/);
  const ben = await benchOf(browser, "ben", library, null);
  await expect(ben.page.locator(".library-place")).toHaveText(/^shared: library\d+ on this machine$/);
  await ben.page.locator(".entry-open").first().click();
  await expect(ben.page).toHaveTitle(/Horn/);
  for (const { page } of [ann, ben]) await openView(page, "Circuit");
  return { library, ann, ben };
}

test("two benches on one library: each sees the other's circuits, and one changed twice at once is kept twice", async ({
  browser,
}) => {
  const { ann, ben } = await bothAtTheHorn(browser);

  // Told before anything is lost or parted, and shown by a press.
  await retitle(ann.page, "Horn of ann");
  await expect(notes(ben.page)).toContainText(/ann changed .* at \d\d:\d\d\./);
  await ben.page.screenshot({ path: test.info().outputPath("told.png") });
  await notes(ben.page).getByRole("button", { name: "Show it as it is now" }).click();
  await expect(ben.page).toHaveTitle("Horn of ann – Wirefathom");
  await retitle(ben.page, "Horn of both");
  await expect(notes(ann.page)).toContainText("ben changed Horn of ann at");

  // Changed all the same: kept at once, beside, though the program is killed right after.
  await retitle(ann.page, "Horn of ann again");
  await expect(notes(ann.page)).toContainText("was changed twice at once");
  await expect(notes(ann.page)).toContainText(/ben changed it too, at \d\d:\d\d/);
  await expect(notes(ann.page)).not.toContainText("Show it as it is now");
  await ann.page.screenshot({ path: test.info().outputPath("beside.png") });
  await ann.kill();

  await ben.page.getByText("Earlier versions").click();
  await expect(ben.page.getByText("Kept beside this one")).toBeVisible();
  await ben.page.screenshot({ path: test.info().outputPath("versions.png") });
  await ben.page.getByRole("button", { name: /^Open it: Kept beside this one, ann/ }).click();
  await expect(ben.page).toHaveTitle("Horn of ann again – Wirefathom");
  await ben.page.getByRole("button", { name: /back to the library/ }).click();
  await expect(ben.page.locator(".entry")).toHaveCount(2);
  await expect(ben.page.locator(".entry", { hasText: "Horn of ann again" })).toContainText("Kept beside by ann");
  await expect(ben.page.locator(".entry", { hasText: "Horn of both" })).not.toContainText("Kept beside");
  await ben.page.screenshot({ path: test.info().outputPath("library.png") });
  await ben.close();
});

test("a page is closed right after a change that met another's: both are there, each once, and what was done last", async ({
  browser,
}) => {
  const { library, ann, ben } = await bothAtTheHorn(browser);
  await retitle(ben.page, "Horn of ben");
  await expect(notes(ann.page)).toContainText("ben changed");

  // The first change finds that of ben; the page goes while that is on its way, with one more that was never sent.
  const sent = ann.page.waitForRequest(/\/call\/circuits\.save$/);
  await retitle(ann.page, "Horn of ann");
  await sent;
  await retitle(ann.page, "Horn of ann, the last");
  await ann.page.close({ runBeforeUnload: true });
  await ben.page.getByRole("button", { name: /back to the library/ }).click();
  await expect(ben.page.locator(".entry", { hasText: "Horn of ann, the last" })).toContainText("Kept beside by ann");
  await expect(ben.page.locator(".entry")).toHaveCount(2);
  await expect(ben.page.locator(".entry", { hasText: "Horn of ben" })).toHaveCount(1);
  await ann.close();
  // Who comes back goes on where the page was left.
  const again = await benchOf(browser, "ann", library, null);
  await expect(again.page.locator(".entry")).toHaveCount(2);
  await again.close();
  await ben.close();
});

test("the server goes away while a bench is worked at: what is changed waits, and is kept once it is back", async ({
  browser,
}) => {
  const library = server.newDatabase();
  const ann = await benchOf(browser, "ann", library, HORN);
  await expect(ann.page).toHaveTitle(/Horn/);
  await openView(ann.page, "Circuit");
  await server.kill();
  await retitle(ann.page, "Horn without a server");
  await expect(notes(ann.page)).toContainText("does not answer");
  await ann.page.screenshot({ path: test.info().outputPath("gone.png") });
  await server.start();
  await expect(notes(ann.page)).not.toContainText("not kept yet", { timeout: 60_000 });
  await ann.kill();
  const again = await benchOf(browser, "ann", library, null);
  await expect(again.page.locator(".entry", { hasText: "Horn without a server" })).toBeVisible();
  await expect(again.page.locator(".entry")).toHaveCount(1);
  await again.close();
});
