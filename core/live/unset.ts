import { remember } from "../base/memo.ts";
import type { CircuitNetwork } from "./network.ts";
import type { Rig } from "./rig.ts";
import { settle } from "./settle.ts";

/** More unset outputs than this are not tried out one against another. */
export const MOST_UNSET = 6;

/** Parts of a network whose kind has outputs that may be left unset. */
const unsettableIn = remember((parts: CircuitNetwork["parts"]) =>
  [...parts.values()].filter(({ kind }) => kind.unset !== undefined),
);

/**
 * Reads a rig out in every combination of the module outputs that nothing decides, the present one first; just once
 * where all are decided. Beyond six outputs all are tried on together and off together.
 */
export function unsetCombinations<T>(rig: Rig, read: () => T): readonly T[] {
  const unset: string[] = [];
  for (const placed of unsettableIn(rig.network.parts)) {
    const { part, kind, view } = placed;
    const pins = kind.unset?.(view, rig.states.get(part.id)!, rig.sees(placed), rig.around(placed)) ?? [];
    unset.push(...pins.map((pin) => `${part.id}.${pin}`));
  }
  const readings = [read()];
  if (unset.length === 0) return readings;
  const tried =
    unset.length > MOST_UNSET
      ? [0, 2 ** unset.length - 1]
      : Array.from({ length: 2 ** unset.length }, (_, bits) => bits);
  for (const bits of tried) {
    rig.driveAlso(
      Object.fromEntries(unset.map((pin, index) => [pin, Math.floor(bits / 2 ** index) % 2 === 1 ? "on" : "off"])),
    );
    settle(rig);
    readings.push(read());
  }
  return readings;
}
