import { basename, dirname, extname, join } from "node:path";
import { app, type BrowserWindow, dialog, type SaveDialogOptions } from "electron";
import { type Outcome, ok } from "../../core/base/outcome.ts";
import { WINDOW_NAMES } from "../../core/base/words/window.ts";
import type { Answer, Checked } from "../../schemas/calls.ts";
import type { Host } from "../answers/host.ts";
import { writeFileWhole } from "../files.ts";
import type { LibraryKeeper } from "../store/library.ts";

const NOTE = "files-folder";

/** The dialogs for files of a window, which begin in the folder that was used last. */
export function fileDialogs(
  keeper: LibraryKeeper,
  window: () => BrowserWindow | null,
): Pick<Host, "saveFile" | "chooseFile"> {
  return {
    saveFile: async (file) => {
      const defaultPath = join(await lastFolder(keeper), basename(file.name));
      const ending = extname(file.name).slice(1);
      const options: SaveDialogOptions = {
        defaultPath,
        filters: [{ name: ending.toUpperCase(), extensions: [ending] }],
        // Linux alone asks about a file that is there already only where it is told to.
        properties: ["showOverwriteConfirmation"],
      };
      const parent = window();
      const { canceled, filePath } = await (parent
        ? dialog.showSaveDialog(parent, options)
        : dialog.showSaveDialog(options));
      return canceled || !filePath ? ok({ done: "cancelled" }) : saved(keeper, filePath, file);
    },
    chooseFile: async () => {
      const options = {
        defaultPath: await lastFolder(keeper),
        properties: ["openFile" as const],
        filters: [
          { name: WINDOW_NAMES.circuitFiles, extensions: ["wirefathom", "json"] },
          { name: WINDOW_NAMES.allFiles, extensions: ["*"] },
        ],
      };
      const parent = window();
      const { canceled, filePaths } = await (parent
        ? dialog.showOpenDialog(parent, options)
        : dialog.showOpenDialog(options));
      const path = filePaths[0];
      if (canceled || path === undefined) return ok({ done: "cancelled" });
      await rememberFolder(keeper, path);
      return ok({ path });
    },
  };
}

async function saved(
  keeper: LibraryKeeper,
  path: string,
  { content, encoding }: Checked<"files.save">,
): Promise<Outcome<Answer<"files.save">>> {
  const written = await writeFileWhole(path, Buffer.from(content, encoding === "base64" ? "base64" : "utf8"));
  if (!written.ok) return written;
  await rememberFolder(keeper, path);
  return ok({ done: "saved", where: path });
}

async function lastFolder(keeper: LibraryKeeper): Promise<string> {
  const library = await keeper.library();
  const folder = library.ok ? await library.value.settings.note(NOTE) : library;
  return folder.ok && typeof folder.value === "string" ? folder.value : app.getPath("documents");
}

async function rememberFolder(keeper: LibraryKeeper, path: string): Promise<void> {
  const library = await keeper.library();
  if (library.ok) await library.value.settings.keepNote(NOTE, dirname(path));
}
