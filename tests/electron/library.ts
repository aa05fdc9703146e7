import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import type { Outcome } from "../../core/base/outcome.ts";
import { ok } from "../../core/base/outcome.ts";
import { answer } from "../../electron/answers/door.ts";
import type { Host } from "../../electron/answers/host.ts";
import { noRequests } from "../../electron/answers/requests.ts";
import { reportsIn } from "../../electron/reports.ts";
import { keepStore, type StoreKeeper } from "../../electron/store/sqlite/keeper.ts";
import type { Answer, Argument, CallName } from "../../schemas/calls.ts";
import { CALLS } from "../../schemas/calls.ts";
import { SAMPLES } from "./sample.ts";

/** A moment that tests begin at. */
export const MORNING = new Date("2026-03-02T08:00:00Z");

/** A folder of the test's own, gone when it ends. */
export function ownFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "wirefathom-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** The value of an outcome that must be one. */
export function value<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`refused: ${JSON.stringify(outcome.refusal)}`);
  return outcome.value;
}

/** The code of an outcome that must be a refusal. */
export function code(outcome: Outcome<unknown>): string {
  return outcome.ok ? `no refusal but ${JSON.stringify(outcome.value)?.slice(0, 80)}` : outcome.refusal.code;
}

/** A host over a library in a folder, whose clock a test moves. */
export interface TestHost extends Host {
  readonly keeper: StoreKeeper;
  setNow(now: Date): void;
}

/** A host whose dialogs answer what the test says; closed when the test ends. */
export function hostOn(
  folder: string,
  dialogs: Partial<Pick<Host, "saveFile" | "chooseFile" | "samples">> = {},
): TestHost {
  let now = MORNING;
  const keeper = keepStore(folder, () => now);
  onTestFinished(() => keeper.close());
  return {
    kind: "loopback",
    version: "0.0.0",
    keeper,
    samples: SAMPLES,
    printer: new URL("../../electron/print/printer.ts", import.meta.url),
    takeHome: folder,
    requests: noRequests(),
    reports: reportsIn(folder, "0.0.0", () => now),
    now: () => now,
    setNow: (later) => {
      now = later;
    },
    saveFile: async () => ok({ done: "download" }),
    chooseFile: async () => ok({ done: "choose" }),
    ...dialogs,
  };
}

/** Asks as a page does: the argument goes through JSON, and an answer that is no refusal is held to its schema. */
export async function ask<N extends CallName>(host: Host, name: N, argument: Argument<N>): Promise<Outcome<Answer<N>>> {
  const outcome = await answer(host, name, JSON.parse(JSON.stringify(argument)));
  const sent = JSON.parse(JSON.stringify(outcome)) as Outcome<Answer<N>>;
  if (sent.ok) CALLS[name].answer.parse(sent.value);
  return sent;
}

/** The same where nothing may be refused. */
export async function got<N extends CallName>(host: Host, name: N, argument: Argument<N>): Promise<Answer<N>> {
  return value(await ask(host, name, argument));
}
