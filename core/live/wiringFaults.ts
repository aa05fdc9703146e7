import type { FaultMode } from "../parts/kind.ts";
import { WEIGHTS } from "../parts/weights.ts";

const SERIES_OHMS = { unit: "ohm", usual: [20, 2, 0.5, 200, 0.05], min: 0.01, max: 1e7 } as const;

/** Ohms of a wire chafed through to the body or to a feed: a firm short (a guess; real ones vary). */
export const SHORT_OHMS = 0.05;

/**
 * How a wire fails. `wire` is the conductor itself, `~mid` its middle: an open cuts it there, a short joins it there.
 * Crossed wires are joined middle to middle; the network finds the other one by the fault's value.
 */
export const WIRE_FAULTS: readonly FaultMode[] = [
  {
    mode: "open",
    title: "broken",
    weight: WEIGHTS.wireOpen,
    repair: "mend the wire",
    effects: () => [{ does: "open", element: "wire" }],
  },
  {
    mode: "ohms",
    title: "poor, ohms added",
    value: SERIES_OHMS,
    weight: WEIGHTS.wirePoor,
    repair: "mend the wire",
    effects: (ohms) => [{ does: "add-ohms", element: "wire", ohms }],
  },
  {
    mode: "short-to-ground",
    title: "chafed through to ground",
    weight: WEIGHTS.wireShorted,
    repair: "mend the wire",
    effects: () => [{ does: "bridge", from: "~mid", to: "=return", ohms: SHORT_OHMS }],
  },
  {
    mode: "short-to-feed",
    title: "touching a feed",
    weight: WEIGHTS.wireShorted / 4,
    repair: "mend the wire",
    effects: () => [{ does: "bridge", from: "~mid", to: "=feed", ohms: SHORT_OHMS }],
  },
  {
    mode: "crossed",
    title: "touching another wire",
    weight: WEIGHTS.wireCrossed,
    repair: "mend the wire",
    effects: () => [{ does: "bridge", from: "~mid", to: "~other", ohms: SHORT_OHMS }],
  },
];

/** How a place in a connector fails. `pin` is the contact between the two halves. */
export const CAVITY_FAULTS: readonly FaultMode[] = [
  {
    mode: "backed-out",
    title: "backed out of its place",
    weight: WEIGHTS.pinBackedOut,
    repair: "mend the pin",
    effects: () => [{ does: "open", element: "pin" }],
  },
  {
    mode: "corroded",
    title: "corroded, ohms added",
    value: { ...SERIES_OHMS, usual: [20, 3, 0.5, 200, 0.05] },
    weight: WEIGHTS.pinCorroded,
    repair: "mend the pin",
    effects: (ohms) => [{ does: "add-ohms", element: "pin", ohms }],
  },
];
