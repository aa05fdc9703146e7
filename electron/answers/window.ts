import { ok, type Refusal } from "../../core/base/outcome.ts";
import type { WindowRequest } from "../../schemas/calls.ts";
import { isExerciseFile } from "../exerciseFile.ts";
import { textIn } from "../files.ts";
import { isJobFile } from "../jobFile.ts";
import { listCircuits, recentCircuits } from "../store/list.ts";
import type { Store } from "../store/open.ts";
import { openAttemptId, openCircuitId } from "../store/recent.ts";
import { settingsOf } from "../store/settings.ts";
import { bringFile } from "./bring.ts";
import type { AnswersOf, Host } from "./host.ts";
import type { Incoming } from "./requests.ts";

/** How long a page's question for the next request stays open, in milliseconds. */
const REQUEST_WAIT = 25_000;
const MOST_RECENT = 12;

/** What is answered about the window as a whole. */
export const WINDOW_ANSWERS: AnswersOf<"start" | "nextRequest" | "class.open" | "class.close"> = {
  start: async (_, host) => {
    const opened = await host.keeper.store();
    if (!opened.ok) return opened;
    const store = opened.value;
    const { exercise, trouble } = await openGivenFile(host, store);
    const attempt = openAttemptId(store);
    return ok({
      version: host.version,
      host: host.kind,
      settings: settingsOf(store),
      count: listCircuits(store, { search: "", where: "library", from: 0, limit: 0 }).count,
      recent: recentCircuits(store, MOST_RECENT),
      open: openCircuitId(store),
      exercise: exercise ?? (attempt === null ? null : { id: attempt }),
      notices: [...host.keeper.takeNotices(), ...trouble],
    });
  },

  nextRequest: async (_, host, gone) => {
    const incoming = await host.requests.next(REQUEST_WAIT, gone);
    return ok({ request: incoming && (await requestOf(host, incoming)) });
  },

  "class.open": async (wish, { classroom }) => ok({ shown: classroom?.open(wish) ?? "page" }),

  "class.close": async (_, { classroom }) => {
    classroom?.close();
    return ok({});
  },
};

/** What the program was started with: an exercise for the page to open, and what is wrong with the file. */
interface Given {
  readonly exercise: { readonly name: string; readonly text: string } | null;
  readonly trouble: readonly Refusal[];
}

/** Takes in the file that the program was started with, if there is one; what is wrong with it is only told. */
async function openGivenFile(host: Host, store: Store): Promise<Given> {
  const path = host.requests.takeStartFile();
  if (path === null) return { exercise: null, trouble: [] };
  if (isExerciseFile(path)) {
    const file = await textIn(path);
    return file.ok ? { exercise: file.value, trouble: [] } : { exercise: null, trouble: [file.refusal] };
  }
  const opened = await bringFile(store, path, host.now());
  return { exercise: null, trouble: opened.ok ? [] : [opened.refusal] };
}

async function requestOf(host: Host, incoming: Incoming): Promise<WindowRequest> {
  if ("menu" in incoming) return { ask: "menu", command: incoming.menu };
  if (isJobFile(incoming.file) || isExerciseFile(incoming.file)) {
    const file = await textIn(incoming.file);
    if (!file.ok) return { ask: "tell", refusal: file.refusal };
    return { ask: isJobFile(incoming.file) ? "job" : "exercise", ...file.value };
  }
  const store = await host.keeper.store();
  const opened = store.ok ? await bringFile(store.value, incoming.file, host.now()) : store;
  return opened.ok ? { ask: "open", id: opened.value.id } : { ask: "tell", refusal: opened.refusal };
}
