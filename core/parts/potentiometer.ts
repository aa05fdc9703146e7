import { line, text } from "../drawing/shapes.ts";
import { arrow, resistorBody } from "./bodies.ts";
import { doesNothing, type Kind } from "./kind.ts";
import { addsOhms, opens } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount } from "./settings.ts";
import { PLACES, shareOf, tapAt, trackControl, trackModel } from "./track.ts";
import { WEIGHTS } from "./weights.ts";

const NAME = { role: "text-quiet" } as const;

/** A potentiometer: track from A to E, wiper W. Its control is the wiper's place in percent from A. */
export const potentiometer: Kind = {
  name: "potentiometer",
  title: "Potentiometer",
  words: ["pot", "position sensor", "pedal sensor", "throttle sensor", "dimmer"],
  letter: "R",
  role: "load",
  settings: [amount("ohms", "track", "ohm", 5000, [1, 1e6], "common practice, no source")],
  terminals: () => ["A", "W", "E"],
  controls: () => [trackControl("Wiper, percent")],
  model(view) {
    const [start, wiper, far] = view.terminals;
    return trackModel(view.number("ohms"), start!, far!, wiper!);
  },
  start: "",
  closed: (_view, _state, around) => [tapAt(around.positions[""])],
  next: (_view, state) => state,
  doing: doesNothing,
  faults: () => [
    opens("wiper", "wiper lifted off its track", WEIGHTS.senderFault, "wiper-open"),
    addsOhms("wiper", "wiper dirty, ohms added", WEIGHTS.senderFault / 2, [1000, 10000], "wiper-dirty"),
    ...PLACES.slice(1).map((place, index) =>
      opens(
        `track-${PLACES[index]}-${place}`,
        `track worn through between ${PLACES[index]} and ${place} %`,
        WEIGHTS.senderFault / 4,
        `track-open-${PLACES[index]}-${place}`,
      ),
    ),
  ],
  symbol(view, pose, look) {
    const [start = "A", wiper = "W", far = "E"] = view.terminals;
    const shape = twoEnded([start, far], resistorBody(look, 2, 2, 6), [2, 6]);
    const y = 2.4 + 3.2 * shareOf(pose.closed);
    return {
      ...shape,
      width: 6,
      terminals: { ...shape.terminals, [wiper]: { x: 6, y: 4, side: "right" } },
      marks: [
        ...shape.marks,
        text(start, 2.45, 0.95, NAME),
        text(wiper, 5.1, 3.6, NAME),
        text(far, 2.45, 7.6, NAME),
        line("symbol-fine", 6, 4, 4.6, 4, 4.6, y),
        ...arrow(4.6, y, 2.8, y),
      ],
      nameAt: { x: 0.6, y: 3.6, anchor: "end" },
    };
  },
  testPoints: loadTestPoints,
};
