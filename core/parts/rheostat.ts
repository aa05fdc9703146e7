import { arrow, resistorBody } from "./bodies.ts";
import { doesNothing, type Kind } from "./kind.ts";
import { addsOhms, opens } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount } from "./settings.ts";
import { PLACES, tapAt, trackControl, trackModel } from "./track.ts";
import { WEIGHTS } from "./weights.ts";

/** A rheostat: ohms between 1 and 2 go with its control, from the wiper's own at 0 to the whole track at 100 percent. */
export const rheostat: Kind = {
  name: "rheostat",
  title: "Rheostat",
  words: ["variable resistor", "dimmer", "instrument lighting"],
  letter: "R",
  role: "load",
  settings: [amount("ohms", "whole track", "ohm", 20, [0.1, 1e6], "common practice, no source")],
  terminals: () => ["1", "2"],
  controls: () => [trackControl("Ohms, percent")],
  model: (view) => trackModel(view.number("ohms"), view.terminals[0]!, "~100", view.terminals[1]!),
  start: "",
  closed: (_view, _state, around) => [tapAt(around.positions[""])],
  next: (_view, state) => state,
  doing: doesNothing,
  faults: () => [
    opens("wiper", "wiper lifted off its track", WEIGHTS.senderFault, "wiper-open"),
    addsOhms("wiper", "wiper dirty, ohms added", WEIGHTS.senderFault / 2, [50, 500], "wiper-dirty"),
    ...PLACES.slice(1).map((place, index) =>
      opens(
        `track-${PLACES[index]}-${place}`,
        `track burnt open between ${PLACES[index]} and ${place} %`,
        WEIGHTS.senderFault / 4,
        `track-open-${PLACES[index]}-${place}`,
      ),
    ),
  ],
  symbol(view, _pose, look) {
    return twoEnded(view.terminals, [...resistorBody(look, 2, 2, 6), ...arrow(0.2, 5.6, 3.8, 2.4)], [2, 6]);
  },
  testPoints: loadTestPoints,
};
