import { ok } from "../../core/base/outcome.ts";
import { keepSettings, settingsOf } from "../store/settings.ts";
import { withStore } from "./circuits.ts";
import type { AnswersOf } from "./host.ts";

/** What the settings answer. */
export const SETTING_ANSWERS: AnswersOf<"settings.get" | "settings.set"> = {
  "settings.get": (_, host) => withStore(host, (store) => ok(settingsOf(store))),

  "settings.set": (changes, host) =>
    withStore(host, (store) => {
      keepSettings(store, changes);
      const settings = settingsOf(store);
      host.onSettings?.(settings);
      return ok(settings);
    }),
};
