import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Volts } from "../base/units.ts";
import { HAPPENS, type Happens } from "./comesAndGoes.ts";
import { MOST_OVER } from "./readValue.ts";
import type { Wiggled } from "./wiggle.ts";

const LONGEST_WHEN = 80;

/** Reads a lowest and a highest, and after them when it was: `2.1..11.8`, `2,1 .. 11,8 when wet`. Refuses `wiggle-spelling`, `wiggle-order` and `wiggle-high`. */
export function readSwing(typed: string, nominalVolts: Volts): Outcome<Omit<Wiggled, "place">> {
  const shape = /^\s*(-?\d*[.,]?\d+)\s*v?\s*(?:\.\.+|…|–|to)\s*(-?\d*[.,]?\d+)\s*v?(?:\s+(\D.*))?\s*$/i.exec(typed);
  const [low, high] = [shape?.[1], shape?.[2]].map((text) => Number(text?.replace(",", ".") ?? Number.NaN));
  if (!shape || !Number.isFinite(low) || !Number.isFinite(high))
    return refuse("wiggle-spelling", { text: typed.trim() });
  const far = [low!, high!].find((volts) => Math.abs(volts) > MOST_OVER * nominalVolts);
  if (far !== undefined) return refuse("wiggle-high", { typed: far, nominal: nominalVolts });
  if (low! > high!) return refuse("wiggle-order", { low: low!, high: high! });
  return ok({ min: low!, max: high!, when: (shape[3] ?? "").trim().slice(0, LONGEST_WHEN) });
}

/** Reads `PLACE : 2.1..11.8 when wet`, as the command line has it. Refuses as `readSwing` does. */
export function readWiggled(typed: string, nominalVolts: Volts): Outcome<Wiggled> {
  const [, place = "", swing = ""] = /^\s*(\S+)\s*:\s*(.*)$/.exec(typed) ?? [];
  if (place === "") return refuse("wiggle-spelling", { text: typed.trim() });
  const read = readSwing(swing, nominalVolts);
  return read.ok ? ok({ place, ...read.value }) : read;
}

/** Reads what brings it on: `hot,wet`. Refuses `wiggle-when`. */
export function readHappens(typed: string): Outcome<readonly Happens[]> {
  const words = typed.split(/[\s,]+/).filter((word) => word !== "");
  const unknown = words.find((word) => !HAPPENS.some((each) => each === word));
  if (unknown !== undefined) return refuse("wiggle-when", { text: unknown, words: HAPPENS.join(", ") });
  return ok(HAPPENS.filter((each) => words.includes(each)));
}

/** A lowest and a highest as they are typed and listed: "2.1..11.8 when wet". */
export function swingText({ min, max, when }: Omit<Wiggled, "place">): string {
  return `${min}..${max}${when === "" ? "" : ` ${when}`}`;
}

/** Whether a value from outside has the shape of something wiggled. */
export function isWiggled(value: unknown): value is Wiggled {
  if (typeof value !== "object" || value === null) return false;
  const { place, min, max, when } = value as Record<string, unknown>;
  return typeof place === "string" && Number.isFinite(min) && Number.isFinite(max) && typeof when === "string";
}
