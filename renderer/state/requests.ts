import { sentence } from "../../core/base/words.ts";
import type { WindowRequest } from "../../schemas/calls.ts";
import type { Host } from "../host/host.ts";
import { takeHandin } from "../instructor/handinFiles.ts";
import { ofLibrary } from "../words/saving.ts";
import type { Action } from "./action.ts";
import type { AppStore } from "./store.ts";

const TRY_AGAIN_MS = 2000;

/** Waits for what comes from outside the page, as a file from the desktop or the window's menu, as long as the page lives. */
export async function listen(host: Host, store: AppStore, pause: (ms: number) => Promise<void>): Promise<never> {
  for (;;) {
    try {
      const answer = await host.ask("nextRequest", {});
      if (answer.ok && answer.value.request) store.dispatch(actionFor(answer.value.request));
      if (!answer.ok) await pause(TRY_AGAIN_MS);
    } catch {
      await pause(TRY_AGAIN_MS);
    }
  }
}

/** What a request from outside comes to in the page. */
export function actionFor(request: WindowRequest): Action {
  switch (request.ask) {
    case "open":
      return { do: "open-circuit", id: request.id };
    case "job":
      return { do: "open-job-text", name: request.name, text: request.text };
    case "exercise":
      return { do: "open-exercise", name: request.name, text: request.text };
    case "handin":
      return { do: "handins", act: takeHandin(request.name, request.text) };
    case "tell":
      return {
        do: "tell",
        notice: request.refusal.code.startsWith("store-")
          ? ofLibrary(request.refusal)
          : { title: "That file was not opened.", words: sentence(request.refusal), isError: true, kind: "open" },
      };
    case "mishap":
      return { do: "mishap", report: { text: request.text, file: request.file } };
    case "menu":
      return MENU[request.command];
  }
}

const MENU: Readonly<Record<Extract<WindowRequest, { ask: "menu" }>["command"], Action>> = {
  "open-file": { do: "choose-file" },
  "save-copy": { do: "save-file" },
  "save-job": { do: "save-job" },
  "take-home": { do: "export", what: "take-home", palette: "light" },
  export: { do: "open-export" },
  print: { do: "open-print" },
  undo: { do: "undo" },
  redo: { do: "redo" },
  find: { do: "open-find" },
  fit: { do: "wish", want: { zoom: "fit" } },
  "actual-size": { do: "wish", want: { zoom: "full-size" } },
  class: { do: "open-class", where: "any" },
  help: { do: "open-help" },
  before: { do: "open-help", topic: "before" },
  about: { do: "open-help", topic: "about" },
  keys: { do: "open-keys" },
};
