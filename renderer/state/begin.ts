import { sentence } from "../../core/base/words.ts";
import type { Host } from "../host/host.ts";
import { GONE_WORDS } from "../words/gone.ts";
import { ofLibrary } from "../words/saving.ts";
import type { AppStore } from "./store.ts";

/** Asks the host what to show first: settings, what must be told, the samples, the library, and what was open. */
export async function begin(host: Host, store: AppStore): Promise<void> {
  await Promise.all([started(host, store), sampled(host, store)]);
}

async function started(host: Host, { dispatch }: AppStore): Promise<void> {
  try {
    const start = await host.ask("start", {});
    if (!start.ok) return dispatch({ do: "library-troubled", words: sentence(start.refusal) });
    const { settings, library, notices, open, exercise } = start.value;
    dispatch({ do: "settled", settings });
    dispatch({ do: "library-named", name: library.name });
    for (const refusal of notices) dispatch({ do: "tell", notice: ofLibrary(refusal) });
    if (exercise)
      dispatch("id" in exercise ? { do: "open-attempt", id: exercise.id } : { do: "open-exercise", ...exercise });
    else dispatch(open === null ? { do: "retry" } : { do: "open-circuit", id: open });
  } catch {
    dispatch({ do: "library-troubled", words: GONE_WORDS });
  }
}

/** Samples need no library, and a library no samples. */
async function sampled(host: Host, { dispatch }: AppStore): Promise<void> {
  const samples = await host.ask("samples.list", {}).catch(() => null);
  if (samples?.ok) dispatch({ do: "samples-listed", samples: samples.value.samples });
}
