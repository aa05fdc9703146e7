import { line } from "../drawing/shapes.ts";
import { FUSE_FAMILIES } from "../trade/fuses.ts";
import { BLOWN, fuseBody, linkModel, meltedDoing } from "./fuse.ts";
import type { Kind } from "./kind.ts";
import { addsOhms } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount, choice } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

/** A fused jumper lead left in the circuit. Its link melts by `amps` and `family`, as a fuse's does. */
export const jumper: Kind = {
  name: "jumper",
  title: "Jumper lead",
  words: ["fused lead", "bridge", "bypass", "test lead"],
  letter: "W",
  role: "join",
  settings: [
    amount("amps", "rating of its fuse", "A", 10, [0.5, 40], "common practice, no source"),
    choice("family", "family of its fuse", "regular", FUSE_FAMILIES, "common practice, no source"),
    amount("ohms", "ohms of lead, clips and fuse", "ohm", 0.03, [0.0001, 10], "common practice, no source"),
  ],
  terminals: () => ["1", "2"],
  controls: () => [],
  model: (view) => linkModel(view, view.number("ohms")),
  start: "good",
  closed: (_view, state) => (state === "melted" ? [] : ["link"]),
  next: (_view, state) => state,
  doing: (_view, state, sees) => meltedDoing(state, sees),
  faults: () => [BLOWN, addsOhms("link", "poor clip, ohms added", WEIGHTS.contactPoor, [2, 20, 0.3])],
  symbol(view, pose, look) {
    const clips = [line("symbol", 1.2, 0.8, 2, 0, 2.8, 0.8), line("symbol", 1.2, 7.2, 2, 8, 2.8, 7.2)];
    const body = [...fuseBody(look, pose.closed.has("link")), ...clips];
    return twoEnded(view.terminals, body, look === "iec" ? [2.4, 5.6] : [2.6, 5.4]);
  },
  testPoints: loadTestPoints,
};
