import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import { sentence } from "../../core/base/words.ts";
import { isExerciseText } from "../../schemas/exercise.ts";
import { isHandinText } from "../../schemas/handin.ts";
import { isJobText } from "../../schemas/job.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { textOf } from "../../schemas/text.ts";
import { base64Of } from "../host/base64.ts";
import { takeHandin } from "../instructor/handinFiles.ts";
import type { Action } from "./action.ts";
import type { AppStore } from "./store.ts";

/** Reads a file that was dropped or chosen and has it opened. What cannot be a circuit is told and goes no further. */
export async function openFile({ dispatch }: Pick<AppStore, "dispatch">, file: File): Promise<void> {
  const read = await readFile(file);
  if (read.ok) dispatch(read.value);
  else {
    const title = `${file.name} was not opened.`;
    dispatch({ do: "tell", notice: { title, words: sentence(read.refusal), isError: true, kind: "open" } });
  }
}

/** What opens a text, by its own word. */
function openingOf(name: string, text: string): Action {
  if (isExerciseText(text)) return { do: "open-exercise", name, text };
  if (isHandinText(text)) return { do: "handins", act: takeHandin(name, text) };
  return { do: isJobText(text) ? "open-job-text" : "open-text", name, text };
}

/** First signs of a file in which a circuit is packed with its pictures. */
const PACKED = [0x50, 0x4b, 3, 4];

/** A file too large to be a circuit is not even read; a folder cannot be. */
async function readFile(file: File): Promise<Outcome<Action>> {
  const { name } = file;
  try {
    const head = new Uint8Array(await file.slice(0, PACKED.length).arrayBuffer());
    const isPacked = PACKED.every((byte, index) => head[index] === byte);
    const most = isPacked ? LIMITS.packBytes : LIMITS.bytes;
    if (file.size > most) return refuse("file-too-large", { limit: most / 1e6 });
    const bytes = new Uint8Array(await file.arrayBuffer());
    if (isPacked) return ok({ do: "open-packed", name, bytes: base64Of(bytes) });
    const text = textOf(bytes);
    if (!text.ok) return text;
    return ok(openingOf(name, text.value));
  } catch {
    return refuse("file-unreadable", { file: name });
  }
}
