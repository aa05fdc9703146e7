import type { Amps, Ohms, Share, Volts } from "../base/units.ts";
import { lampAmps, lightShare, type RatedLamp } from "../trade/lamps.ts";
import type { FaultMode } from "./kind.ts";

/** Ohms left where a load or diode has shorted inside (a guess; real ones vary). */
export const SHORTED_OHMS: Ohms = 0.05;

/** An element that no longer conducts. */
export function opens(element: string, title: string, weight: number, mode = "open", repair = "replace"): FaultMode {
  return { mode, title, weight, repair, effects: () => [{ does: "open", element }] };
}

/** An element that has become a short. */
export function shorts(element: string, title: string, weight: number, mode = "shorted"): FaultMode {
  return { mode, title, weight, repair: "replace", effects: () => [{ does: "set-ohms", element, ohms: SHORTED_OHMS }] };
}

/** An element with ohms in series that should not be there; the value is those ohms. */
export function addsOhms(
  element: string,
  title: string,
  weight: number,
  usual: readonly number[],
  mode = "ohms",
): FaultMode {
  return {
    mode,
    title,
    value: { unit: "ohm", usual, min: 0.01, max: 1e6 },
    weight,
    repair: "replace",
    effects: (ohms) => [{ does: "add-ohms", element, ohms }],
  };
}

/** A contact that no longer obeys. */
export function sticks(element: string, closed: boolean, title: string, weight: number, mode: string): FaultMode {
  return { mode, title, weight, repair: "replace", effects: () => [{ does: "stick", element, closed }] };
}

/** Whether a load draws over twice what its own ohms let it draw at these volts: shorted inside, it does no work. */
export function isShorted(healthyOhms: Ohms, volts: Volts, amps: Amps): boolean {
  return Math.abs(amps) * healthyOhms > 2 * Math.abs(volts) + 1e-9;
}

/**
 * Volts over the load proper, without sign: not over ohms that a fault adds to it, and none where it is open or shorted.
 * At the ohms of 20 C, so that copper that must reach certain amps can be judged by them.
 */
export function innerVolts(healthyOhms: Ohms, volts: Volts, amps: Amps): Volts {
  return isShorted(healthyOhms, volts, amps) ? 0 : Math.abs(amps) * healthyOhms;
}

/** Light of a filament as a share of rated; none where it is open, though volts lie across it, or shorted. */
export function filamentLight(volts: Volts, amps: Amps, rated: RatedLamp): Share {
  const wanted = Math.abs(lampAmps(volts, rated));
  const drawn = Math.abs(amps);
  return drawn < wanted / 2 || drawn > wanted * 2 ? 0 : lightShare(volts, rated.volts);
}
