import type { Ohms } from "../base/units.ts";
import type { Mark } from "../drawing/mark.ts";
import { arc, box, line, text } from "../drawing/shapes.ts";
import { coldOhms, FUSE_FAMILIES, isFuseFamily } from "../trade/fuses.ts";
import type { Doing, FaultMode, Kind, Look, ModelElement, PartView, Sees } from "./kind.ts";
import { addsOhms } from "./loadFaults.ts";
import { twoEnded } from "./outline.ts";
import { amount, choice } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

/** Cold ohms: as set, else those of the rating and family. */
export function linkOhms(view: PartView): Ohms {
  const set = view.number("coldOhms");
  const family = view.word("family");
  return set > 0 ? set : coldOhms(isFuseFamily(family) ? family : "regular", view.number("amps")).ohms;
}

/** A link from the first terminal to the second that something can open. */
export function linkModel(view: PartView, ohms: Ohms): readonly ModelElement[] {
  const [a = "1", b = "2"] = view.terminals;
  return [{ key: "link", a, b, law: { law: "resistor", ohms }, passes: "contact" }];
}

/** A melted link is told; a good one does no work. */
export function meltedDoing(state: string, sees: Sees): Doing | null {
  return state === "melted" ? { doing: "melted", amps: sees.amps("link"), watts: 0, work: 0 } : null;
}

/** The link has melted, for whatever reason. */
export const BLOWN: FaultMode = {
  mode: "blown",
  title: "blown",
  weight: WEIGHTS.fuseBlown,
  repair: "replace",
  effects: () => [{ does: "hold", state: "melted" }],
};

/**
 * A fuse: one link, closed until it melts. When that happens is for the live room to say, by `amps` and `family`; the
 * part itself never leaves the state it is in.
 */
export const fuse: Kind = {
  name: "fuse",
  title: "Fuse",
  words: ["blade fuse", "fusible link", "protection"],
  letter: "F",
  role: "protection",
  settings: [
    amount("amps", "rating", "A", 10, [0.5, 500], "common practice, no source"),
    choice("family", "family", "regular", FUSE_FAMILIES, "common practice, no source"),
    amount(
      "coldOhms",
      "cold ohms, 0 for those of the rating",
      "ohm",
      0,
      [0, 1],
      "by rating and family; sources beside the table",
    ),
  ],
  terminals: () => ["1", "2"],
  controls: () => [],
  model: (view) => linkModel(view, linkOhms(view)),
  start: "good",
  closed: (_view, state) => (state === "melted" ? [] : ["link"]),
  next: (_view, state) => state,
  doing: (_view, state, sees) => meltedDoing(state, sees),
  faults: () => [BLOWN, addsOhms("link", "poor contact at its blades", WEIGHTS.contactPoor, [2, 20, 0.3])],
  symbol(view, pose, look) {
    const isWhole = pose.closed.has("link");
    const shape = twoEnded(view.terminals, fuseBody(look, isWhole), look === "iec" ? [2.4, 5.6] : [2.6, 5.4]);
    return {
      ...shape,
      marks: [...shape.marks, text(`${view.number("amps")} A`, 4.6, 5.7)],
      nameAt: { x: 4.6, y: 2.8, anchor: "start" },
    };
  },
  testPoints: (view) => view.terminals.map((terminal) => ({ terminal, touches: "blade" })),
};

/** The body between y 2.4 and 5.6; a melted link has a gap in its middle. */
export function fuseBody(look: Look, isWhole: boolean): readonly Mark[] {
  if (look === "iec") {
    const through = isWhole
      ? [line("symbol", 2, 2.4, 2, 5.6)]
      : [line("symbol", 2, 2.4, 2, 3.3), line("symbol", 2, 4.7, 2, 5.6)];
    return [box("symbol", 1.2, 2.4, 1.6, 3.2), ...through];
  }
  const upper = arc("symbol", 2, 3.3, 0.7, isWhole ? 90 : 150, 270);
  const lower = arc("symbol", 2, 4.7, 0.7, 270, isWhole ? 450 : 390);
  return [upper, lower];
}
