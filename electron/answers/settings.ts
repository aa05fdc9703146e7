import { withLibrary } from "./circuits.ts";
import type { AnswersOf } from "./host.ts";

/** What the settings answer. */
export const SETTING_ANSWERS: AnswersOf<"settings.get" | "settings.set"> = {
  "settings.get": (_, host) => withLibrary(host, ({ settings }) => settings.read()),

  "settings.set": (changes, host) =>
    withLibrary(host, async ({ settings }) => {
      const kept = await settings.keep(changes);
      if (kept.ok) host.onSettings?.(kept.value);
      return kept;
    }),
};
