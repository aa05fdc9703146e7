import type { Volts } from "../base/units.ts";
import type { SettingSpec } from "./kind.ts";

/** A numeric setting with the same default for every nominal voltage. */
export function amount(
  name: string,
  label: string,
  unit: string,
  usual: number | ((nominalVolts: Volts) => number),
  limits: readonly [number, number],
  source: string,
): SettingSpec {
  const at = typeof usual === "number" ? () => usual : usual;
  return { name, label, unit, value: { type: "number", usual: at, min: limits[0], max: limits[1] }, source };
}

/** A setting with a few words to choose from. */
export function choice(
  name: string,
  label: string,
  usual: string,
  choices: readonly string[],
  source: string,
): SettingSpec {
  return { name, label, unit: "", value: { type: "choice", usual, choices }, source };
}

/** A setting that is there or not. */
export function yesNo(name: string, label: string, usual: boolean, source: string): SettingSpec {
  return { name, label, unit: "", value: { type: "yes-no", usual }, source };
}

/** Picks the first value for a 12 V vehicle, the second for a 24 V one. */
export function by(twelve: number, twentyFour: number): (nominalVolts: Volts) => number {
  return (nominalVolts) => (nominalVolts > 18 ? twentyFour : twelve);
}
