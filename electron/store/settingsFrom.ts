import type { Json } from "../../schemas/json.ts";
import { FIRST_SETTINGS, type Settings, settingsShape } from "../../schemas/settings.ts";

/** Prefix of what the host notes for itself beside the settings. */
export const NOTE = "host.";

/** All settings out of what is stored by name; one that was never set, or that does not fit any more, is as at a first start. */
export function settingsFrom(stored: (name: string) => Json | undefined): Settings {
  const names = Object.keys(settingsShape.shape) as (keyof Settings)[];
  const kept = names.map((name) => {
    const read = settingsShape.shape[name].safeParse(stored(name));
    return [name, read.success ? read.data : FIRST_SETTINGS[name]];
  });
  return Object.fromEntries(kept) as Settings;
}

/** A value as it is stored, in JSON; undefined where there is none that can be read. */
export function valueIn(text: string | undefined): Json | undefined {
  try {
    return text === undefined ? undefined : (JSON.parse(text) as Json);
  } catch {
    return undefined;
  }
}
