import { type Refusal, refuse } from "../base/outcome.ts";
import type { Volts } from "../base/units.ts";
import type { Kind, Part } from "./kind.ts";
import { settingsOf } from "./view.ts";

/** The refusal `setting-order` of the first two settings of a part of which the smaller must be the larger, else null. */
export function orderRefusal(kind: Kind, part: Part, nominalVolts: Volts): Refusal | null {
  if (!kind.rising) return null;
  const settings = settingsOf(kind, part, nominalVolts);
  const said = (name: string): string => {
    const { label = name, unit = "" } = kind.settings.find((spec) => spec.name === name) ?? {};
    return `${label} ${settings[name]}${unit === "" ? "" : ` ${unit}`}`;
  };
  const wrong = kind.rising.find(([less, more]) => Number(settings[less]) >= Number(settings[more]));
  return wrong ? refuse("setting-order", { part: part.id, less: said(wrong[0]), more: said(wrong[1]) }).refusal : null;
}
