import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import {
  test as base,
  type ConsoleMessage,
  type ElectronApplication,
  expect,
  type Page,
  type Request,
  type TestInfo,
} from "@playwright/test";
import { openElectron } from "./electronHost.ts";
import { openLoopback } from "./loopbackHost.ts";
import type { HostName, OpenProgram, SavedFile } from "./opened.ts";

/*
 * How to write a story. In a file `NAME.spec.ts` of this folder:
 *
 *     import { expect, story } from "./story.ts";
 *
 *     story("a fuse that is pulled stays pulled", async ({ program }) => {
 *       await program.page.getByRole("button", { name: "Open" }).click();
 *       ...
 *       await program.restart();
 *       await expect(program.page.getByText("F3 is out")).toBeVisible();
 *     });
 *
 * It is told in a browser with the loopback host, on a library of its own that is empty at first. The page is the same in the
 * program's own window: there a story is told too where it needs what hosts do in ways of their own (windows, menus, files,
 * dialogs, keeping, printing), and says so, `story("...", { tag: "@both" }, async ...)`. `npm run test:long` tells all of
 * them in both. Find things as a person does, by role and name. Ask for `program.page` anew after a restart.
 * A fault on the page's console, as something that its policy forbids, and anything asked of the network by page or host
 * fails the story by itself. What differs between the
 * hosts belongs in `opened.ts` and its two hosts, not in a story; what only one of them has, in a file named for it, as
 * `electronWindow.spec.ts`. `story.use({ file: PATH })` starts with a file.
 * The page that is run is the one in `out/`: `npm run build` first. A story takes two seconds; make few, long ones.
 *
 *     npx playwright test -c tests/window/playwright.config.ts [NAME] [--project=loopback|electron]
 *
 * With TESTS_LONG=1 before it, any story is told in the program's own window.
 */

/** The program as a story sees it. */
export interface Program {
  readonly host: HostName;
  readonly page: Page;
  /** Electron's own side, for what only a window has; null in a browser. */
  readonly app: ElectronApplication | null;
  /** Folder of the library. */
  readonly folder: string;
  /** What went wrong in the page so far. A story that brings a fault about takes it out. */
  readonly faults: string[];
  /** Closes it as a person does and starts it again, with a file or none. */
  restart(file?: string): Promise<void>;
  /** Kills it and starts it again. */
  kill(): Promise<void>;
  /** The file that comes out of the program by what is done meanwhile. */
  saved(act: () => Promise<unknown>): Promise<SavedFile>;
  /** Gives a file where what is done meanwhile asks for one. */
  chooses(file: string, act: () => Promise<unknown>): Promise<void>;
}

interface Given {
  readonly host: HostName;
  /** A circuit file to start with. */
  readonly file: string | null;
  readonly program: Program;
}

/** A test that opens the program. */
export const story = base.extend<Given>({
  host: ["loopback", { option: true }],
  file: [null, { option: true }],
  program: async ({ host, file, context }, use, about) => {
    const folder = mkdtempSync(join(tmpdir(), "wirefathom-story-"));
    const faults: string[] = [];
    let unwatch = (): void => {};
    const opened = async (file: string | null): Promise<OpenProgram> => {
      const next = host === "loopback" ? await openLoopback(context, folder, file) : await openElectron(folder, file);
      unwatch = watch(next.page, faults);
      // A window is there before its page is.
      await next.page.locator("#app > *").first().waitFor();
      return next;
    };
    let now = await opened(file);
    tellEngine(about, now.engine);
    await use({
      host,
      folder,
      faults,
      get page() {
        return now.page;
      },
      get app() {
        return now.app;
      },
      restart: async (next) => {
        unwatch();
        await now.close();
        now = await opened(next ?? null);
      },
      kill: async () => {
        unwatch();
        await now.kill();
        now = await opened(null);
      },
      saved: (act) => now.saved(act),
      chooses: (path, act) => now.chooses(path, act),
    });
    if (about.status !== about.expectedStatus)
      await now.page.screenshot({ path: about.outputPath("window.png") }).catch(() => {});
    unwatch();
    await now.close();
    rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
    expect(faults).toEqual([]);
  },
});

export { expect };

/** Writes down what goes wrong in a page, until it is told to stop. */
function watch(page: Page, faults: string[]): () => void {
  const onError = (error: Error): void => void faults.push(error.stack ?? error.message);
  const onConsole = (said: ConsoleMessage): void => {
    if (said.type() === "error") faults.push(said.text());
  };
  const onRequest = (asked: Request): void => {
    if (!staysHere(asked.url())) faults.push(`the network was asked for ${asked.url()}`);
  };
  page.on("pageerror", onError).on("console", onConsole);
  // Of every window and worker that the page opens, too.
  page.context().on("request", onRequest);
  return () => {
    page.off("pageerror", onError).off("console", onConsole);
    page.context().off("request", onRequest);
  };
}

/** True where what a page asks for is its own host's, or made by itself. */
function staysHere(address: string): boolean {
  const { protocol, hostname } = new URL(address);
  if (["app:", "blob:", "data:", "devtools:"].includes(protocol)) return true;
  return protocol === "http:" && (hostname === "127.0.0.1" || hostname.endsWith(".standin.localhost"));
}

const told = new Set<string>();

/** Says once in a run, and with each result, what ran the page. */
function tellEngine({ annotations, project }: TestInfo, engine: string): void {
  annotations.push({ type: "engine", description: engine });
  const words = `${project.name}: ${engine}`;
  if (!told.has(words)) console.log(words);
  told.add(words);
}
