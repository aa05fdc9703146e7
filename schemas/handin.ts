import type { z } from "zod";
import { type Outcome, ok, refuse } from "../core/base/outcome.ts";
import type { Recorded } from "../core/lesson/move.ts";
import { moveText } from "../core/lesson/moveText.ts";
import type { Opened } from "./exercise.ts";
import { handinShape, recordedShape } from "./handinShape.ts";
import { refusalOf } from "./issue.ts";
import { type Json, parseJson } from "./json.ts";
import { sha256, signed } from "./seal.ts";
import { textOf } from "./text.ts";

/** The version of the hand-in file that this program writes. */
export const HANDIN_VERSION = 1;
/** The format that a hand-in file names. */
export const HANDIN_FORMAT = "wirefathom/handin";

/** What a learner hands in: who, of which exercise, and the whole route with its times. */
export interface Handin {
  readonly learner: string;
  /** Title, and the id that `Opened` has. */
  readonly exercise: { readonly title: string; readonly id: string };
  readonly route: readonly Recorded[];
}

/** A hand-in as its file has it, the links of its chain sound among themselves. */
export interface HandinFile extends Handin {
  /** The last link, signed with the exercise's key. */
  readonly last: string;
  readonly signature: string;
}

/**
 * The text of a hand-in. Each link is the SHA-256 of the link before and of its move with answer, minutes and time; the last is
 * signed with the exercise's own key, so that a chain made anew by hand shows as well.
 */
export async function formatHandin(
  learner: string,
  { exercise, id, handinKey }: Opened,
  route: readonly Recorded[],
): Promise<string> {
  const about = { learner, exercise: { title: exercise.title, id } };
  const head = await headOf(about);
  const links = await linksOf(head, route);
  const signature = await signed(handinKey, links.at(-1) ?? head);
  const linked = route.map((recorded, index) => ({ ...recordedShape.parse(recorded), link: links[index] }));
  return `${JSON.stringify({ format: HANDIN_FORMAT, version: HANDIN_VERSION, ...about, head, route: linked, signature }, null, 2)}\n`;
}

async function headOf({ learner, exercise: { title, id } }: Omit<Handin, "route">): Promise<string> {
  return sha256(JSON.stringify([HANDIN_FORMAT, HANDIN_VERSION, learner, title, id]));
}

async function linksOf(head: string, route: readonly Recorded[]): Promise<readonly string[]> {
  const links: string[] = [];
  for (const recorded of route) {
    const { move, minutes, answer, time } = recordedShape.parse(recorded);
    links.push(await sha256(JSON.stringify([links.at(-1) ?? head, move, minutes, answer, time])));
  }
  return links;
}

/**
 * Reads a `*.handin.json`, given as text or bytes. Refuses `handin-format`, `file-newer`, `handin-head` where name or exercise were
 * edited, `handin-edited` with the number of the first move that was, and with the path or the line whatever else is wrong.
 */
export async function readHandin(file: string | Uint8Array): Promise<Outcome<HandinFile>> {
  const text = textOf(file);
  if (!text.ok) return text;
  const json = parseJson(text.value);
  if (!json.ok) return json;
  const { format, version } = json.value as Readonly<Record<string, Json>>;
  if (format !== HANDIN_FORMAT)
    return refuse("handin-format", { format: typeof format === "string" ? format.slice(0, 40) : "nothing" });
  if (typeof version === "number" && version > HANDIN_VERSION)
    return refuse("file-newer", { version, known: HANDIN_VERSION });
  const parsed = handinShape.safeParse(json.value);
  return parsed.success ? unbroken(parsed.data) : { ok: false, refusal: refusalOf(parsed.error.issues, json.value) };
}

/** The hand-in where its chain holds; else where it breaks. */
async function unbroken(file: z.infer<typeof handinShape>): Promise<Outcome<HandinFile>> {
  const { learner, exercise, head, signature } = file;
  if (head !== (await headOf(file))) return refuse("handin-head", { learner });
  const route = file.route.map(({ link: _, ...recorded }): Recorded => recorded);
  const links = await linksOf(head, route);
  const broken = links.findIndex((link, index) => link !== file.route[index]!.link);
  if (broken >= 0) return refuse("handin-edited", { learner, number: broken + 1, move: moveText(route[broken]!.move) });
  return ok({ learner, exercise, route, last: links.at(-1) ?? head, signature });
}

/**
 * Whether a hand-in is of this exercise and was written by the learner's program. Refuses `handin-other` for another exercise or
 * another make of it, `handin-unsigned` where moves were cut off or the chain was made anew by hand.
 */
export async function checkedHandin(file: HandinFile, { id, handinKey, exercise }: Opened): Promise<Outcome<Handin>> {
  const { learner } = file;
  if (file.exercise.id !== id)
    return refuse("handin-other", { learner, title: file.exercise.title, wanted: exercise.title });
  if (file.signature !== (await signed(handinKey, file.last))) return refuse("handin-unsigned", { learner });
  return ok({ learner, exercise: file.exercise, route: file.route });
}

/** Whether a text is meant as a hand-in, by its own word; it may still be refused. */
export function isHandinText(text: string): boolean {
  return /^\s*\{\s*"format"\s*:\s*"wirefathom\/handin"/.test(text.slice(0, 400));
}
