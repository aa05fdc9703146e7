import { ok } from "../../core/base/outcome.ts";
import { isExerciseFile } from "../exerciseFile.ts";
import { textIn } from "../files.ts";
import { isJobFile } from "../jobFile.ts";
import { bringFile } from "./bring.ts";
import { withLibrary } from "./circuits.ts";
import type { AnswersOf } from "./host.ts";

/** What a page takes up itself, by the file's name; null for a circuit. */
export function forThePage(path: string): "job" | "exercise" | "handin" | null {
  if (isJobFile(path)) return "job";
  if (isExerciseFile(path)) return "exercise";
  return path.toLowerCase().endsWith(".handin.json") ? "handin" : null;
}

/** What is answered where the person is asked for a file. */
export const FILE_ANSWERS: AnswersOf<"files.save" | "files.open"> = {
  "files.save": (file, host) => host.saveFile(file),

  "files.open": async (_, host) => {
    const chosen = await host.chooseFile();
    if (!chosen.ok) return chosen;
    if ("done" in chosen.value) return ok(chosen.value);
    const { path } = chosen.value;
    const done = forThePage(path);
    if (done !== null) {
      const file = await textIn(path);
      return file.ok ? ok({ done, ...file.value }) : file;
    }
    const opened = await withLibrary(host, (library) => bringFile(library, path, host.now()));
    return opened.ok ? ok({ done: "opened", opened: opened.value }) : opened;
  },
};
