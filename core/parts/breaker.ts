import type { Mark } from "../drawing/mark.ts";
import { arc, box, line, terminalRing, text } from "../drawing/shapes.ts";
import { linkModel } from "./fuse.ts";
import type { Kind, Look } from "./kind.ts";
import { addsOhms } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount, choice } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

/** Share of its rating above which a breaker opens (common practice, no source; blade fuses melt from the same share). */
const OPENS_ABOVE = 1.35;

/**
 * A circuit breaker: over 135 % of its rating it opens. One reset by hand goes to `tripped`. An automatic one would close
 * and open again for as long as the overload lasts; it goes to `cycling`, which counts as open. Neither closes by itself:
 * with no current it cannot tell that the overload has gone, so whoever changes the condition sets it back to `closed`.
 */
export const breaker: Kind = {
  name: "breaker",
  title: "Circuit breaker",
  words: ["thermal cut-out", "circuit protector", "resettable fuse"],
  letter: "F",
  role: "protection",
  settings: [
    amount("amps", "rating", "A", 10, [0.5, 500], "wiper maker's FAQ: 10 A breaker for one 12 V motor"),
    choice("resets", "resets", "automatically", ["automatically", "by hand"], "common practice, no source"),
    amount("coldOhms", "ohms", "ohm", 0.008, [0.0001, 10], "common practice, no source"),
  ],
  terminals: () => ["1", "2"],
  controls: () => [],
  model: (view) => linkModel(view, view.number("coldOhms")),
  start: "closed",
  closed: (_view, state) => (state === "closed" ? ["link"] : []),
  next(view, state, sees) {
    if (state !== "closed" || Math.abs(sees.amps("link")) <= OPENS_ABOVE * view.number("amps")) return state;
    return view.word("resets") === "by hand" ? "tripped" : "cycling";
  },
  doing: (_view, state) => (state === "closed" ? null : { doing: "tripped", amps: 0, watts: 0, work: 0 }),
  faults: () => [
    {
      mode: "stays-out",
      title: "stays open",
      weight: WEIGHTS.fuseBlown,
      repair: "replace",
      effects: () => [{ does: "hold", state: "tripped" }],
    },
    {
      mode: "does-not-trip",
      title: "does not open on overload",
      weight: WEIGHTS.contactStuck,
      repair: "replace",
      effects: () => [{ does: "hold", state: "closed" }],
    },
    addsOhms("link", "contact burnt, ohms added", WEIGHTS.contactPoor, [2, 20, 0.3]),
  ],
  symbol(view, pose, look) {
    const shape = twoEnded(view.terminals, contact(look, pose.closed.has("link")), [2, 6]);
    return {
      ...shape,
      marks: [...shape.marks, text(`${view.number("amps")} A`, 4.6, 5.7)],
      nameAt: { x: 4.6, y: 2.8, anchor: "start" },
    };
  },
  testPoints: loadTestPoints,
};

/** IEC: a contact with the sign of heat at its link; North America: an arc over two rings, lifted off when open. */
function contact(look: Look, isClosed: boolean): readonly Mark[] {
  const rings = [terminalRing(2, 2), terminalRing(2, 6)];
  if (look === "na") {
    const bow = isClosed ? arc("contact-now", 2, 4, 2, 270, 450) : arc("contact-now", 2.5, 3.6, 1.6, 270, 450);
    return [bow, ...rings];
  }
  const blade = isClosed
    ? [line("contact-now", 2, 6, 2, 2)]
    : [line("contact-rest", 2, 6, 2, 2), line("contact-now", 2, 6, 3.4, 2.5)];
  const heat = [box("symbol-fine", -0.2, 3.4, 1, 1.2), line("link", 0.8, 4, isClosed ? 2 : 2.8, 4)];
  return [...heat, ...blade, ...rings];
}
