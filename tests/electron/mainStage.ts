import { expect, onTestFinished, vi } from "vitest";
import type * as Fake from "./fakeElectron.ts";
import { ownFolder } from "./library.ts";

/** Address of the page in the window. */
export const PAGE = "app://wirefathom/";
/** The fake that the main file of this test talks to. */
export let fake: typeof Fake;

/** Gives a test modules of its own, since the main file acts as soon as it is loaded. */
export async function freshModules(): Promise<void> {
  vi.resetModules();
  vi.doMock("electron", () => import("./fakeElectron.ts"));
  fake = await import("./fakeElectron.ts");
}

/** Loads the main file over a library in a folder, as `electron . WORDS` does; ready only when the test says so. */
export async function loaded(folder: string, words: readonly string[] = []): Promise<void> {
  vi.stubEnv("WIREFATHOM_DATA", folder);
  const argv = process.argv;
  process.argv = ["electron", ".", ...words];
  const { app, record } = fake;
  onTestFinished(async () => {
    process.argv = argv;
    const before = record.calls.length;
    if (isPrevented((event) => app.emit("will-quit", event))) {
      await vi.waitFor(() => expect(record.calls.slice(before)).toContainEqual(["quit"]));
    }
  });
  await import("../../electron/main.ts");
}

/** The same, ready and with its window. */
export async function running(folder = ownFolder(), words: readonly string[] = []): Promise<Fake.FakeWindow> {
  await loaded(folder, words);
  fake.app.ready.resolve();
  await vi.waitFor(() => expect(names()).toContain("load"));
  return fake.record.windows[0]!;
}

/** Names of what was asked of Electron, in order. */
export function names(from = 0): readonly string[] {
  return fake.record.calls.slice(from).map(([name]) => name);
}

/** Whether a thing that can be prevented was. */
export function isPrevented(emit: (event: { preventDefault(): void }) => void): boolean {
  let prevented = false;
  emit({
    preventDefault: () => {
      prevented = true;
    },
  });
  return prevented;
}

/** A frame of a page that calls. */
export interface Frame {
  readonly url: string;
  readonly parent: unknown;
}

/** Calls as a frame of the window does. */
export async function called(frame: Frame | null, name: unknown = "start", argument: unknown = "{}") {
  const handler = fake.record.handlers.get("call") as unknown as (...given: unknown[]) => Promise<string>;
  const sender = fake.record.windows[0]!.webContents;
  return JSON.parse(await handler({ senderFrame: frame, sender }, name, argument));
}

/** The frame of the window's own page. */
export const OWN: Frame = { url: PAGE, parent: null };
