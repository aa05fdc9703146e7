import type { Ohms } from "../base/units.ts";
import type { Control, ModelElement } from "./kind.ts";

/** Where the wiper of a variable resistor can stand, in percent of the track. Finer steps serve no test. */
export const PLACES = ["0", "25", "50", "75", "100"] as const;

/** Ohms between track and wiper (a guess). */
export const WIPER_OHMS: Ohms = 1;
const TAP_OHMS: Ohms = 0.02;

/** The handle of a variable resistor: its position is percent of the track from the start; 0 is rest. */
export function trackControl(label: string): Control {
  return { name: "", label, positions: PLACES.map((name) => ({ name, joins: [] })) };
}

/** The end of the model that lies at a place on the track; `start` and `far` are what its ends are joined to. */
function endAt(place: string, start: string, far: string): string {
  if (place === "0") return start;
  return place === "100" ? far : `~${place}`;
}

/**
 * A track in four quarters from `start` to `far`, and a wiper to terminal `wiper` that taps it at one place: contacts
 * `at-0` to `at-100`. Nothing of it is a firm path.
 */
export function trackModel(ohms: Ohms, start: string, far: string, wiper: string): readonly ModelElement[] {
  const quarters = PLACES.slice(1).map((place, index): ModelElement => {
    const from = PLACES[index]!;
    return {
      key: `track-${from}-${place}`,
      a: endAt(from, start, far),
      b: endAt(place, start, far),
      law: { law: "resistor", ohms: ohms / 4 },
      passes: "load",
    };
  });
  const taps = PLACES.map((place): ModelElement => {
    const law = { law: "resistor", ohms: TAP_OHMS } as const;
    return { key: `at-${place}`, a: endAt(place, start, far), b: "~wiper", law, passes: "contact" };
  });
  const brush: ModelElement = {
    key: "wiper",
    a: "~wiper",
    b: wiper,
    law: { law: "resistor", ohms: WIPER_OHMS },
    passes: "load",
  };
  return [...quarters, ...taps, brush];
}

/** The tap that is closed where the wiper stands. */
export function tapAt(position: string | undefined): string {
  return `at-${position ?? PLACES[0]}`;
}

/** Where a pose says the wiper stands, as a share of the track. */
export function shareOf(closed: ReadonlySet<string>): number {
  const place = PLACES.find((name) => closed.has(tapAt(name)));
  return Number(place ?? 0) / 100;
}
