import { sentence } from "../../core/base/words.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { textOf } from "../../schemas/text.ts";
import type { AppStore } from "./store.ts";

/** Reads a file that was dropped or chosen and has it opened. What cannot be a circuit is told and goes no further. */
export async function openFile({ dispatch }: Pick<AppStore, "dispatch">, file: File): Promise<void> {
  const read = await readText(file);
  if (read.ok) dispatch({ do: "open-text", name: file.name, text: read.value });
  else {
    const title = `${file.name} was not opened.`;
    dispatch({ do: "tell", notice: { title, words: sentence(read.refusal), isError: true } });
  }
}

/** A file too large to be a circuit is not even read; a folder cannot be. */
async function readText(file: File): Promise<ReturnType<typeof textOf>> {
  if (file.size > LIMITS.bytes)
    return { ok: false, refusal: { code: "file-too-large", about: { limit: LIMITS.bytes / 1e6 } } };
  try {
    return textOf(new Uint8Array(await file.arrayBuffer()));
  } catch {
    return { ok: false, refusal: { code: "file-unreadable", about: { file: file.name } } };
  }
}
