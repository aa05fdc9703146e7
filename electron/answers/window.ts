import { type Outcome, ok, type Refusal } from "../../core/base/outcome.ts";
import type { Answer, WindowRequest } from "../../schemas/calls.ts";
import { isExerciseFile } from "../exerciseFile.ts";
import { textIn } from "../files.ts";
import type { Library } from "../store/library.ts";
import { bringFile } from "./bring.ts";
import { withLibrary } from "./circuits.ts";
import { forThePage } from "./files.ts";
import type { AnswersOf, Host } from "./host.ts";
import type { Incoming } from "./requests.ts";

/** How long a page's question for the next request stays open, in milliseconds. */
const REQUEST_WAIT = 25_000;
const MOST_RECENT = 12;

/** What is answered about the window as a whole. */
export const WINDOW_ANSWERS: AnswersOf<"start" | "nextRequest" | "window.front" | "class.open" | "class.close"> = {
  start: (_, host) => withLibrary(host, (library) => begun(host, library)),

  nextRequest: async (_, host, gone) => {
    // What is met while the program runs, as a copy that cannot be made.
    for (const refusal of host.keeper.takeNotices()) host.requests.add({ tell: refusal });
    const incoming = await host.requests.next(REQUEST_WAIT, gone);
    return ok({ request: incoming && (await requestOf(host, incoming)) });
  },

  "window.front": async ({ front }, host) => {
    host.onFront?.(front);
    return ok({});
  },

  "class.open": async (wish, { classroom }) => ok({ shown: classroom?.open(wish) ?? "page" }),

  "class.close": async (_, { classroom }) => {
    classroom?.close();
    return ok({});
  },
};

async function begun(host: Host, library: Library): Promise<Outcome<Answer<"start">>> {
  const { exercise, trouble } = await openGivenFile(host, library);
  const settings = await library.settings.read();
  if (!settings.ok) return settings;
  const listed = await library.circuits.list({ search: "", where: "library", from: 0, limit: 0 });
  if (!listed.ok) return listed;
  const recent = await library.recent.list(MOST_RECENT);
  if (!recent.ok) return recent;
  const onBench = await library.recent.onBench();
  if (!onBench.ok) return onBench;
  const { circuit, attempt } = onBench.value;
  return ok({
    version: host.version,
    host: host.kind,
    library: host.keeper.place,
    settings: settings.value,
    count: listed.value.count,
    recent: recent.value,
    open: circuit,
    exercise: exercise ?? (attempt === null ? null : { id: attempt }),
    notices: [...host.keeper.takeNotices(), ...trouble],
  });
}

/** What the program was started with: an exercise for the page to open, and what is wrong with the file. */
interface Given {
  readonly exercise: { readonly name: string; readonly text: string } | null;
  readonly trouble: readonly Refusal[];
}

/** Takes in the file that the program was started with, if there is one; what is wrong with it is only told. */
async function openGivenFile(host: Host, library: Library): Promise<Given> {
  const path = host.requests.takeStartFile();
  if (path === null) return { exercise: null, trouble: [] };
  if (isExerciseFile(path)) {
    const file = await textIn(path);
    return file.ok ? { exercise: file.value, trouble: [] } : { exercise: null, trouble: [file.refusal] };
  }
  // Jobs and hand-ins are taken up once the page is there, as if they came then.
  if (forThePage(path) !== null) {
    host.requests.add({ file: path });
    return { exercise: null, trouble: [] };
  }
  const opened = await bringFile(library, path, host.now());
  return { exercise: null, trouble: opened.ok ? [] : [opened.refusal] };
}

async function requestOf(host: Host, incoming: Incoming): Promise<WindowRequest> {
  if ("tell" in incoming) return { ask: "tell", refusal: incoming.tell };
  if ("report" in incoming) return { ask: "mishap", ...incoming.report };
  if ("menu" in incoming) return { ask: "menu", command: incoming.menu };
  const ask = forThePage(incoming.file);
  if (ask !== null) {
    const file = await textIn(incoming.file);
    return file.ok ? { ask, ...file.value } : { ask: "tell", refusal: file.refusal };
  }
  const opened = await withLibrary(host, (library) => bringFile(library, incoming.file, host.now()));
  return opened.ok ? { ask: "open", id: opened.value.id } : { ask: "tell", refusal: opened.refusal };
}
