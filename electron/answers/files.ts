import { ok } from "../../core/base/outcome.ts";
import { isExerciseFile } from "../exerciseFile.ts";
import { textIn } from "../files.ts";
import { isJobFile } from "../jobFile.ts";
import { bringFile } from "./bring.ts";
import type { AnswersOf } from "./host.ts";

/** What is answered where the person is asked for a file. */
export const FILE_ANSWERS: AnswersOf<"files.save" | "files.open"> = {
  "files.save": (file, host) => host.saveFile(file),

  "files.open": async (_, host) => {
    const chosen = await host.chooseFile();
    if (!chosen.ok) return chosen;
    if ("done" in chosen.value) return ok(chosen.value);
    const { path } = chosen.value;
    if (isJobFile(path) || isExerciseFile(path)) {
      const file = await textIn(path);
      return file.ok ? ok({ done: isJobFile(path) ? "job" : "exercise", ...file.value }) : file;
    }
    const store = await host.keeper.store();
    if (!store.ok) return store;
    const opened = await bringFile(store.value, path, host.now());
    return opened.ok ? ok({ done: "opened", opened: opened.value }) : opened;
  },
};
