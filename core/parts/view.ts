import { assert } from "../base/outcome.ts";
import type { Volts } from "../base/units.ts";
import type { Kind, Part, PartView, Setting, Settings } from "./kind.ts";

/** Every setting of a part: the kind's defaults for these nominal volts, then what the part says, then `changed`. */
export function settingsOf(kind: Kind, part: Part, nominalVolts: Volts, changed: Settings = {}): Settings {
  const all: Record<string, Setting> = {};
  for (const spec of kind.settings) {
    const usual = spec.value.type === "number" ? spec.value.usual(nominalVolts) : spec.value.usual;
    all[spec.name] = changed[spec.name] ?? part.settings?.[spec.name] ?? usual;
  }
  return all;
}

/** A part with all its settings, as a kind's functions want it. `changed` is what a fault alters. */
export function viewOf(kind: Kind, part: Part, nominalVolts: Volts, changed: Settings = {}): PartView {
  const settings = settingsOf(kind, part, nominalVolts, changed);
  const known = (name: string): Setting => {
    const value = settings[name];
    // The sentence is not put together where it is not needed: coils are asked for their settings after every search.
    if (value === undefined) assert(false, `${kind.name} has no setting ${name}`);
    return value;
  };
  return {
    part,
    terminals: part.terminals ?? kind.terminals(part, settings),
    controls: kind.controls(part),
    nominalVolts,
    number: (name) => Number(known(name)),
    word: (name) => String(known(name)),
    yes: (name) => known(name) === true,
  };
}
