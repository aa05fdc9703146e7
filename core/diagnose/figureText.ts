import { figure } from "../base/figure.ts";
import type { Ohms } from "../base/units.ts";
import { OPEN_FROM } from "../trade/instruments.ts";
import { milliampsText } from "./drain.ts";
import type { Fineness } from "./spread.ts";
import type { Window } from "./step.ts";

/** How a figure is read: how finely, and over which cold ohms of a fuse where its millivolts tell milliamps. */
export interface ReadAs {
  readonly fineness: Fineness;
  readonly ohms?: Ohms | null;
}

/** Ohms as a meter shows them: "0.3 ohm", "47 ohm", "4.7 kohm", "open". */
export function ohmsText(ohms: Ohms): string {
  if (ohms >= OPEN_FROM) return "open";
  if (ohms >= 1e3) return `${Number((ohms / 1e3).toPrecision(3))} kohm`;
  return `${Number(ohms.toFixed(ohms < 10 ? 1 : 0))} ohm`;
}

/** A figure with its unit as its instrument shows it: "11.9 V", "25 mV", "0.7 mV (91 mA)", "1.2 ohm", "0.4 A". */
export function figureText(read: number, { fineness, ohms = null }: ReadAs): string {
  switch (fineness) {
    case "volts":
      return `${figure(read, 1)} V`;
    case "ohms":
      return ohmsText(read);
    case "amps":
      return `${figure(read, 1)} A`;
    case "millivolts":
      return `${figure(read * 1000, 0)} mV`;
    case "tenths":
      return ohms === null
        ? `${figure(read * 1000, 0)} mV`
        : `${figure(read * 1000, 1)} mV (${milliampsText(read / ohms)} mA)`;
  }
}

/** Limits in words, with their unit: "below 10.8 V", "0.4 to 3.1 ohm"; "" where there are none. */
export function limitText({ low, high }: Pick<Window, "low" | "high">, as: ReadAs): string {
  if (!Number.isFinite(low) && !Number.isFinite(high)) return "";
  if (!Number.isFinite(low)) return `below ${figureText(high, as)}`;
  if (!Number.isFinite(high)) return `above ${figureText(low, as)}`;
  const [from, to] = [figureText(low, as), figureText(high, as)];
  // One unit does for both where it is the same.
  const [, number, unit] = /^(\S+) (\S+)$/.exec(from) ?? [];
  return unit !== undefined && to.endsWith(` ${unit}`) ? `${number} to ${to}` : `${from} to ${to}`;
}
