import { ok, type Refusal } from "../../core/base/outcome.ts";
import type { WindowRequest } from "../../schemas/calls.ts";
import { isJobFile, jobTextIn } from "../jobFile.ts";
import { listCircuits, recentCircuits } from "../store/list.ts";
import type { Store } from "../store/open.ts";
import { openCircuitId } from "../store/recent.ts";
import { settingsOf } from "../store/settings.ts";
import { bringFile } from "./bring.ts";
import type { AnswersOf, Host } from "./host.ts";
import type { Incoming } from "./requests.ts";

/** How long a page's question for the next request stays open, in milliseconds. */
const REQUEST_WAIT = 25_000;
const MOST_RECENT = 12;

/** What is answered about the window as a whole. */
export const WINDOW_ANSWERS: AnswersOf<"start" | "nextRequest"> = {
  start: async (_, host) => {
    const opened = await host.keeper.store();
    if (!opened.ok) return opened;
    const store = opened.value;
    const trouble = await openGivenFile(host, store);
    return ok({
      version: host.version,
      host: host.kind,
      settings: settingsOf(store),
      count: listCircuits(store, { search: "", where: "library", from: 0, limit: 0 }).count,
      recent: recentCircuits(store, MOST_RECENT),
      open: openCircuitId(store),
      notices: [...host.keeper.takeNotices(), ...trouble],
    });
  },

  nextRequest: async (_, host, gone) => {
    const incoming = await host.requests.next(REQUEST_WAIT, gone);
    return ok({ request: incoming && (await requestOf(host, incoming)) });
  },
};

/** Takes in the file that the program was started with, if there is one; what is wrong with it is only told. */
async function openGivenFile(host: Host, store: Store): Promise<readonly Refusal[]> {
  const path = host.requests.takeStartFile();
  if (path === null) return [];
  const opened = await bringFile(store, path, host.now());
  return opened.ok ? [] : [opened.refusal];
}

async function requestOf(host: Host, incoming: Incoming): Promise<WindowRequest> {
  if ("menu" in incoming) return { ask: "menu", command: incoming.menu };
  if (isJobFile(incoming.file)) {
    const job = await jobTextIn(incoming.file);
    return job.ok ? { ask: "job", ...job.value } : { ask: "tell", refusal: job.refusal };
  }
  const store = await host.keeper.store();
  const opened = store.ok ? await bringFile(store.value, incoming.file, host.now()) : store;
  return opened.ok ? { ask: "open", id: opened.value.id } : { ask: "tell", refusal: opened.refusal };
}
