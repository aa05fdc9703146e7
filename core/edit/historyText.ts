import { remember } from "../base/memo.ts";
import { type Outcome, ok, refuse } from "../base/outcome.ts";
import { BENCH_FIELDS } from "./bench.ts";
import type { Change } from "./change.ts";
import type { Edit } from "./edit.ts";
import type { History, Step } from "./history.ts";

const VERSION = 1;
/** What a kept history takes at most, in bytes of UTF-8. */
export const MOST_HISTORY_BYTES = 1_000_000;
/** Braces, names of the two lists and the version. */
const FRAME_BYTES = 64;

/** A step as JSON, kept: a history is saved again after every edit. */
const written = remember((step: Step): { readonly text: string; readonly bytes: number } => {
  const text = JSON.stringify(step);
  return { text, bytes: bytesOf(text) + 1 };
});

/**
 * A history as JSON of at most so many bytes. What is furthest from the present is left out first, done and undone
 * alike, so that what is kept can still be undone one after another.
 */
export function historyText({ done, undone }: History, mostBytes = MOST_HISTORY_BYTES): string {
  const sides = [done, undone].map((steps) => ({ steps, kept: [] as string[], isFull: false }));
  let left = mostBytes - FRAME_BYTES;
  for (let back = 1; sides.some(({ isFull }) => !isFull); back++) {
    for (const side of sides) {
      const step = side.steps.at(-back);
      side.isFull ||= step === undefined || written(step).bytes > left;
      if (step === undefined || side.isFull) continue;
      left -= written(step).bytes;
      side.kept.push(written(step).text);
    }
  }
  const [was, willBe] = sides.map(({ kept }) => kept.reverse().join(","));
  return `{"version":${VERSION},"done":[${was}],"undone":[${willBe}]}`;
}

/** Bytes of a text in UTF-8. */
function bytesOf(text: string): number {
  let bytes = 0;
  for (const sign of text) {
    const code = sign.codePointAt(0)!;
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
  }
  return bytes;
}

/**
 * Reads a kept history. Refuses `history-newer`, and `history-damaged` where the text is none or a step has not the shape
 * of one; what a step does is judged by `apply` when it is undone.
 */
export function historyOf(text: string): Outcome<History> {
  const kept = parsed(text);
  if (!isObject(kept)) return refuse("history-damaged");
  const { version, done, undone } = kept;
  if (typeof version === "number" && version > VERSION) return refuse("history-newer", { version });
  if (version !== VERSION || !areSteps(done) || !areSteps(undone)) return refuse("history-damaged");
  return ok({ done, undone });
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function areSteps(list: unknown): list is readonly Step[] {
  return Array.isArray(list) && list.every(isStep);
}

function isStep(step: unknown): step is Step {
  if (!isObject(step) || !isEdit(step.edit) || !isEdit(step.inverse)) return false;
  return step.group === null || typeof step.group === "string";
}

function isEdit(edit: unknown): edit is Edit {
  return isObject(edit) && typeof edit.name === "string" && Array.isArray(edit.changes) && edit.changes.every(isChange);
}

/** What must be text, by the word of the change; lists and records must be those of a circuit. */
const TEXTS: Readonly<Record<Change["change"], readonly string[]>> = {
  bench: ["field"],
  circuit: ["field"],
  item: ["list", "id", "field"],
  add: ["list"],
  remove: ["list", "id"],
  entry: ["record", "key"],
};
const LISTS = ["pages", "parts", "wires", "connectors", "access", "checks"];
const RECORDS = ["reach", "places", "bends"];

function isChange(change: unknown): change is Change {
  if (!isObject(change) || !Object.hasOwn(TEXTS, String(change.change))) return false;
  if (!TEXTS[change.change as Change["change"]].every((name) => typeof change[name] === "string")) return false;
  if (change.change === "add" && !(isObject(change.item) && typeof change.item.id === "string")) return false;
  if (
    change.change === "bench" &&
    !(BENCH_FIELDS.some((field) => field === change.field) && Object.hasOwn(change, "value"))
  )
    return false;
  if (typeof change.list === "string" && !LISTS.includes(change.list)) return false;
  return typeof change.record !== "string" || RECORDS.includes(change.record);
}
