import type { Amps, Ohms, Volts } from "../base/units.ts";
import type { Mark } from "../drawing/mark.ts";
import { filledBox, line, text } from "../drawing/shapes.ts";
import { INTERNAL_OHMS, internalOhms, OPEN_CIRCUIT_SOURCE, openVolts } from "../trade/battery.ts";
import type { Kind, PartView, Sees } from "./kind.ts";
import { addsOhms } from "./loadFaults.ts";
import { twoEnded } from "./outline.ts";
import { amount, by, yesNo } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

/** Ohms that a battery shows more while it is charged than while it supplies (common practice, no source). */
const CHARGING_OHMS: Ohms = 0.1;
/** Most of the internal ohms that lie in the path which charging opens. */
const MOST_PATH_OHMS: Ohms = 0.001;
const IDLE_AMPS: Amps = 0.01;

/** The battery's own volts with nothing on it: the table's for its charge, scaled to its nominal volts. */
function ownVolts(view: PartView): Volts {
  return (openVolts(view.number("charge") / 100) * view.number("volts")) / 12;
}

function ampsOut(sees: Sees): Amps {
  return -sees.amps("cells");
}

/**
 * A battery: its cells lie between "+" and a hidden node, and from there to "-" run two paths. The one of 0.1 ohm is
 * always there; the other has next to no ohms and opens while current flows into "+", so that charging meets 0.1 ohm more.
 * The plus post is the cells' own end: what is fed is measured against that.
 */
export const battery: Kind = {
  name: "battery",
  title: "Battery",
  words: ["accumulator", "cells", "supply"],
  letter: "G",
  role: "source",
  settings: [
    amount("volts", "nominal volts", "V", by(12, 24), [2, 60], "nominal volts of the vehicle"),
    amount(
      "charge",
      "state of charge",
      "%",
      100,
      [0, 100],
      `a full battery; volts by charge: ${OPEN_CIRCUIT_SOURCE.document}`,
    ),
    amount("internalOhms", "internal ohms", "ohm", internalOhms, [0.001, 5], INTERNAL_OHMS.source.document),
    yesNo("reference", "volts are measured to its negative post", false, "the first battery where none is marked"),
  ],
  terminals: () => ["+", "-"],
  controls: () => [],
  model(view) {
    const [plus = "+", minus = "-"] = view.terminals;
    const internal = view.number("internalOhms");
    const path = Math.min(internal / 2, MOST_PATH_OHMS);
    const charging = CHARGING_OHMS + path;
    // The two paths side by side have `path` ohms, so that the whole battery has its internal ohms while it supplies.
    const supplying = (path * charging) / CHARGING_OHMS;
    return [
      {
        key: "cells",
        a: plus,
        b: "~cells",
        law: { law: "source", volts: ownVolts(view), ohms: internal - path },
        passes: "source",
      },
      { key: "charging", a: "~cells", b: minus, law: { law: "resistor", ohms: charging }, passes: "conductor" },
      { key: "supplying", a: "~cells", b: minus, law: { law: "resistor", ohms: supplying }, passes: "contact" },
    ];
  },
  start: "supplying",
  closed: (_view, state) => (state === "charging" ? [] : ["supplying"]),
  next(_view, state, sees) {
    if (ampsOut(sees) < -IDLE_AMPS) return "charging";
    return ampsOut(sees) > 0 ? "supplying" : state;
  },
  doing(view, _state, sees) {
    const [plus = "+", minus = "-"] = view.terminals;
    const volts = (sees.terminalVolts(plus) ?? 0) - (sees.terminalVolts(minus) ?? 0);
    const out = ampsOut(sees);
    const doing = out > IDLE_AMPS ? "supplying" : out < -IDLE_AMPS ? "charging" : "off";
    return { doing, amps: out, watts: volts * out, work: volts };
  },
  faults: () => [
    {
      mode: "flat",
      title: "flat",
      value: { unit: "%", usual: [25, 0], min: 0, max: 100 },
      weight: WEIGHTS.batteryFlat,
      repair: "charge or replace",
      effects: (charge) => [{ does: "set", setting: "charge", value: charge }],
    },
    addsOhms("cells", "high internal ohms", WEIGHTS.batteryPoor, [0.05, 0.5]),
  ],
  symbol(view) {
    const plates = [
      line("symbol", 0.2, 2.5, 3.8, 2.5),
      plate(3.3),
      line("symbol", 0.2, 4.5, 3.8, 4.5),
      plate(5.3),
      text("+", 0.3, 1.9, { anchor: "middle" }),
      text("−", 0.3, 7.2, { anchor: "middle" }),
    ];
    return twoEnded(view.terminals, plates, [2.5, 5.5]);
  },
  testPoints: (view) => view.terminals.map((terminal) => ({ terminal, touches: "post" })),
};

/** The short thick plate of a cell. */
function plate(y: number): Mark {
  return filledBox("solid", 1.2, y, 1.6, 0.35);
}
