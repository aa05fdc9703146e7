import { settingsShape } from "../settings.ts";
import { type Call, nothing } from "./call.ts";

/** Calls on what a person has set. */
export const SETTING_CALLS = {
  "settings.get": { argument: nothing, answer: settingsShape },
  /** Changes the settings given and answers with all of them. */
  "settings.set": { argument: settingsShape.partial(), answer: settingsShape },
} as const satisfies Readonly<Record<string, Call>>;
