import { type Outcome, refuse } from "../../core/base/outcome.ts";
import { isExerciseText, readExercise } from "../../schemas/exercise.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { textOf } from "../../schemas/text.ts";
import type { FileTaken, HandinsAct } from "./handins.ts";

/** Reads files onto the desk: exercises by their own word, all others as hand-ins, which say themselves what is wrong with them. */
export async function takeFiles(files: readonly File[]): Promise<Extract<HandinsAct, { act: "take" }>> {
  const read = await Promise.all(files.map(fileTaken));
  const isExercise = ({ text }: FileTaken): boolean => text !== null && isExerciseText(text);
  const handins = read.filter((file) => !isExercise(file));
  const exercises = read.filter(isExercise).flatMap(({ name, text }) => {
    const file = readExercise(text!);
    if (file.ok) return [{ name, title: file.value.exercise.title, text: text! }];
    // What is wrong with it is said in the table, where what is wrong with hand-ins is.
    handins.push({ name, text: null, refusal: file.refusal });
    return [];
  });
  return { act: "take", exercises, handins };
}

async function fileTaken(file: File): Promise<FileTaken> {
  const text = await textIn(file);
  return text.ok
    ? { name: file.name, text: text.value, refusal: null }
    : { name: file.name, text: null, refusal: text.refusal };
}

async function textIn(file: File): Promise<Outcome<string>> {
  if (file.size > LIMITS.bytes) return refuse("file-too-large", { limit: LIMITS.bytes / 1e6 });
  try {
    return textOf(new Uint8Array(await file.arrayBuffer()));
  } catch {
    return refuse("file-unreadable", { file: file.name });
  }
}

/** Puts one hand-in on the desk, as its file was read. */
export function takeHandin(name: string, text: string): Extract<HandinsAct, { act: "take" }> {
  return { act: "take", exercises: [], handins: [{ name, text, refusal: null }] };
}

/** Whether a file is meant for the instructor's desk, by its name. */
export function isHandinFile({ name }: Pick<File, "name">): boolean {
  return name.toLowerCase().endsWith(".handin.json");
}

/** Has the person choose files, as many as they like. */
export function chooseFiles(take: (files: readonly File[]) => void): void {
  const field = document.createElement("input");
  field.type = "file";
  field.multiple = true;
  field.accept = ".json,application/json";
  field.addEventListener("change", () => {
    if (field.files?.length) take([...field.files]);
  });
  field.click();
}
