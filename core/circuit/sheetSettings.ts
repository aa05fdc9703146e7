import type { SheetPart } from "./sheetSetup.ts";

/** Settings that a technician looks for on the page, by kind of part. Others are for the part editor. */
const SHOWN: Readonly<Record<string, readonly string[]>> = {
  battery: ["volts"],
  alternator: ["amps"],
  fuse: ["amps"],
  breaker: ["amps"],
  lamp: ["watts"],
  "two-filament-lamp": ["mainWatts", "secondWatts"],
  heater: ["watts"],
  resistor: ["ohms"],
  potentiometer: ["ohms"],
  rheostat: ["ohms"],
  solenoid: [],
};

const SIGNS: Readonly<Record<string, string>> = { ohm: "Ω", degC: "°C" };

/** The key settings of a part in one short text, `60 A`, `60/55 W`; empty where there are none. */
export function settingText({ kind, view }: Pick<SheetPart, "kind" | "view">): string {
  const specs = (SHOWN[kind.name] ?? []).flatMap((name) => kind.settings.filter((spec) => spec.name === name));
  const units = [...new Set(specs.map(({ unit }) => unit))];
  return units
    .map((unit) => {
      const values = specs.filter((spec) => spec.unit === unit).map(({ name }) => view.number(name));
      return amountText(values, SIGNS[unit] ?? unit);
    })
    .join(" · ");
}

function amountText(values: readonly number[], unit: string): string {
  const isLarge = values.every((value) => value >= 1000);
  const numbers = values.map((value) => (isLarge ? value / 1000 : value)).join("/");
  return `${numbers}\u00A0${isLarge ? "k" : ""}${unit}`;
}
