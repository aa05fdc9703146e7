import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { ElectronApplication } from "@playwright/test";
import { sampleText } from "../electron/sample.ts";
import { openSample, positionOf, throwTo } from "./acts.ts";
import { programOfElectron } from "./electronHost.ts";
import { ROOT } from "./machine.ts";
import { expect, type Program, story } from "./story.ts";

/** An edit is on the disk within a second. */
const KEPT_MS = 1_000;
/** What is promised of a page that was lost: it is back within three seconds. Asserted is three times that, for other programs run meanwhile. */
const BACK_MS = 3_000;
const ASSERTED_MS = 3 * BACK_MS;

function appOf({ app }: Program): ElectronApplication {
  if (!app) throw new Error("this story is one of the program's own window");
  return app;
}

story(
  "a page has nothing of the machine; one that goes elsewhere stays, and opens no second window",
  async ({ program }) => {
    const { page, faults } = program;
    const app = appOf(program);
    expect(
      await page.evaluate(() => ({
        named: ["require", "process", "module", "Buffer", "global", "electron", "ipcRenderer"].filter(
          (name) => name in window,
        ),
        bridge: Object.keys(Reflect.get(window, "wirefathom")),
      })),
    ).toEqual({ named: [], bridge: ["call"] });
    const tried = (text: string) => page.evaluate(`${text}.then(() => "let in", () => "refused")`);
    expect(await tried(`fetch("https://example.com/")`)).toBe("refused");
    expect(await tried(`fetch("file:///etc/passwd")`)).toBe("refused");
    expect(await tried(`navigator.clipboard.readText()`)).toBe("refused");
    expect(await tried(`navigator.mediaDevices.getUserMedia({ video: true })`)).toBe("refused");
    // Begun after the call has come back: a call that waits for a navigation which is denied may wait for ever.
    await page.evaluate(`setTimeout(() => window.open("https://example.com/")); undefined`);
    await page.evaluate(`setTimeout(() => location.assign("https://example.com/")); undefined`);
    await page.waitForTimeout(500);
    expect(
      await app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().map((each) => each.webContents.getURL())),
    ).toEqual(["app://wirefathom/"]);
    await expect.poll(() => app.windows().length).toBe(1);
    await expect(page).toHaveTitle("Wirefathom");
    // The page tells of the navigation that came to nothing.
    faults.length = 0;
  },
);

/** What a page that was lost and came back shows of control S1, and what it offers to take back; empty while it shows none of it. */
const SHOWN = `(() => {
  const pressed = document.querySelector('[data-key="S1"] [aria-pressed="true"]');
  const undo = document.querySelector('button[aria-label^="Undo: "]');
  return pressed && undo ? [document.title, pressed.dataset.position, undo.getAttribute("aria-label")].join("; ") : "";
})()`;

/** What a page says that the driver of tests lost with its process. A page that is going away may never answer. */
function saidBy(app: ElectronApplication, expression: string): Promise<unknown> {
  return app.evaluate(
    ({ BrowserWindow }, asked) =>
      Promise.race([
        BrowserWindow.getAllWindows()[0]!
          .webContents.executeJavaScript(asked)
          .catch(() => ""),
        new Promise((resolve) => setTimeout(() => resolve(""), 500)),
      ]),
    expression,
  );
}

story("a page that is lost is the same bench again, with all that can be undone", async ({ program }) => {
  const app = appOf(program);
  await openSample(program.page, "Roof vents");
  await throwTo(program.page, "S1", "on");
  const shown = await saidBy(app, SHOWN);
  expect(shown).toMatch(/^Roof vents.* – Wirefathom; on; Undo: (?!nothing)/);
  await program.page.waitForTimeout(KEPT_MS);
  const gone = app.evaluate(
    ({ BrowserWindow }) =>
      new Promise((resolve) => {
        const { webContents } = BrowserWindow.getAllWindows()[0]!;
        webContents.once("render-process-gone", (_event, { reason }) => resolve(reason));
        webContents.forcefullyCrashRenderer();
      }),
  );
  expect(await gone).toMatch(/crashed|killed/);
  const begun = performance.now();
  const again = expect.poll(() => saidBy(app, SHOWN), { timeout: ASSERTED_MS, intervals: [50] });
  await again.toBe(shown);
  console.log(`the same bench ${Math.round(performance.now() - begun)} ms after its page was lost`);
  await saidBy(app, `document.querySelector('button[aria-label^="Undo: "]').click()`);
  const position = `document.querySelector('[data-key="S1"] [aria-pressed="true"]').dataset.position`;
  await expect.poll(() => saidBy(app, position)).toBe("off");
  const reports = join(program.folder, "reports");
  const [report] = readdirSync(reports);
  expect(readFileSync(join(reports, report!), "utf8")).toMatch(/^It said: Error: the page was lost: (crashed|killed)/m);
  await program.restart();
  await expect(positionOf(program.page, "S1", "off")).toHaveAttribute("aria-pressed", "true");
});

story("the menu and a second start reach the page", async ({ program }) => {
  const { page, folder } = program;
  const app = appOf(program);
  const isOffered = (label: string): Promise<boolean | undefined> =>
    app.evaluate(({ Menu }, wanted) => {
      const entries = Menu.getApplicationMenu()!.items.flatMap(({ submenu }) => submenu?.items ?? []);
      return entries.find((entry) => entry.label === wanted)?.enabled;
    }, label);
  expect(await isOffered("Print...")).toBe(false);
  await openSample(page, "Horn");
  await expect.poll(() => isOffered("Print...")).toBe(true);
  await app.evaluate(({ Menu }) => {
    const entries = Menu.getApplicationMenu()!.items.flatMap(({ submenu }) => submenu?.items ?? []);
    entries.find(({ label }) => label === "Print...")!.click();
  });
  await expect(page.getByRole("dialog", { name: "Print" })).toBeVisible();
  await page.keyboard.press("Escape");

  const file = join(folder, "second.circuit.json");
  writeFileSync(file, sampleText().replace(/"title": "[^"]*"/, '"title": "From the desktop"'));
  const env = { ...process.env, WIREFATHOM_DATA: folder };
  const second = spawnSync(programOfElectron(), [ROOT, file], { env, encoding: "utf8", timeout: 20_000 });
  expect(second.status).toBe(0);
  await expect(page).toHaveTitle("From the desktop – Wirefathom");
});
