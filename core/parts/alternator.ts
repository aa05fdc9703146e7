import type { Amps } from "../base/units.ts";
import { circle, line, text } from "../drawing/shapes.ts";
import type { Law } from "../solve/element.ts";
import { MODEL_VOLTS } from "../trade/battery.ts";
import { DIODES } from "./diode.ts";
import type { FaultMode, Kind, ModelElement, PartView, SymbolShape } from "./kind.ts";
import { addsOhms, opens, SHORTED_OHMS, sticks } from "./loadFaults.ts";
import { loadTestPoints } from "./outline.ts";
import { amount, by, yesNo } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

/** Amps through the rotor that excite it. */
const EXCITING_AMPS: Amps = 0.1;
/** Below this share of its full amps the rotor is starved: a running alternator gives nothing (a guess). */
const STARVED = 0.4;
/** What its diodes leave of its output with one open and with one shorted (guesses; what is lost differs by load and speed). */
const ONE_OPEN = 0.7;
const ONE_SHORTED = 0.4;
/** Volts that the regulator lets go for each ampere (a guess: 0.2 V at 70 A). */
const REGULATION_OHMS = 0.003;
/** What lets current out of the running generator and not back in; its small drop is made good by the regulator. */
const ONE_WAY: Law = { law: "diode", saturationAmps: 1e-3, emissionVolts: 0.015 };
const PASSING_VOLTS = 0.15;
const BRIDGE = ["positive-1", "positive-2", "positive-3", "negative-1", "negative-2", "negative-3"] as const;

/**
 * An alternator with its regulator inside: B+, D+ (61) for the charge lamp, B-. Stopped, D+ returns through rotor and
 * regulator and the bridge blocks. Running it gives its set volts up to its rating, and D+ is as high as B+, though the
 * battery cannot feed back from B+ into D+. DC knows no phases: the three windings are one node, `~stator`, and when
 * running a bad diode only lowers the rating.
 */
export const alternator: Kind = {
  name: "alternator",
  title: "Alternator",
  words: ["generator", "dynamo", "charging", "regulator", "61"],
  letter: "G",
  role: "source",
  settings: [
    amount(
      "volts",
      "set volts",
      "V",
      by(MODEL_VOLTS[12].running, MODEL_VOLTS[24].running),
      [5, 60],
      "24 V: US Army TM 5-2410-240-23-1; 12 V: common practice, no source",
    ),
    amount("amps", "rating", "A", 70, [1, 600], "common practice, no source"),
    amount("fieldOhms", "rotor", "ohm", by(4, 9), [0.5, 100], "from memory"),
    yesNo("selfExciting", "excites itself without a charge lamp", true, "common practice, no source"),
    amount("left", "share of its output left by its diodes", "", 1, [0, 1], "set by a fault"),
  ],
  terminals: () => ["B+", "D+", "B-"],
  controls: () => [],
  model(view) {
    const [output, exciter, minus] = view.terminals as readonly [string, string, string];
    const [volts, fieldOhms] = [view.number("volts"), view.number("fieldOhms")];
    const maxAmps = view.number("amps") * view.number("left") + volts / fieldOhms;
    const contact = (key: string, a: string, b: string, ohms: number): ModelElement => {
      return { key, a, b, law: { law: "resistor", ohms }, passes: "contact" };
    };
    const diode = (key: string, a: string, b: string): ModelElement => {
      return { key, a, b, law: DIODES.rectifier, passes: "diode" };
    };
    return [
      {
        key: "generator",
        a: "~raw",
        b: minus,
        law: { law: "regulated", volts: volts + PASSING_VOLTS, ohms: REGULATION_OHMS, maxAmps },
        passes: "source",
      },
      { key: "output-way", a: "~raw", b: "~output", law: ONE_WAY, passes: "diode" },
      contact("output", "~output", output, 0.002),
      { key: "exciter-way", a: "~raw", b: "~exciter", law: ONE_WAY, passes: "diode" },
      contact("exciter", "~exciter", exciter, 0.05),
      {
        key: "field",
        a: exciter,
        b: "~field",
        law: { law: "resistor", ohms: fieldOhms },
        passes: "load",
        copper: true,
      },
      contact("regulator", "~field", minus, 0.05),
      ...BRIDGE.map((key) => (key < "p" ? diode(key, minus, "~stator") : diode(key, "~stator", output))),
      diode("exciter-diodes", "~stator", exciter),
    ];
  },
  start: "stopped",
  closed: (_view, state) => (state === "charging" ? ["output", "exciter", "regulator"] : ["regulator"]),
  next(view, state, sees, around) {
    if (!around.engineRunning) return "stopped";
    const fieldAmps = Math.abs(sees.amps("field"));
    const fullAmps = view.number("volts") / view.number("fieldOhms");
    if (state === "charging") return fieldAmps > STARVED * fullAmps ? "charging" : "no-output";
    if (state === "no-output") return "no-output";
    return view.yes("selfExciting") || fieldAmps > EXCITING_AMPS ? "charging" : "stopped";
  },
  doing(view, state, sees) {
    const amps = Math.abs(sees.amps("output"));
    const [plus, minus] = [sees.terminalVolts(view.terminals[0]!), sees.terminalVolts(view.terminals[2]!)];
    const volts = state === "charging" ? (plus ?? 0) - (minus ?? 0) : 0;
    return { doing: state === "charging" ? "charging" : "off", amps, watts: volts * amps, work: volts };
  },
  faults: (view) => [
    opens("field", "rotor or brushes open", WEIGHTS.motorOpen, "field-open"),
    addsOhms("field", "brushes worn, ohms added", WEIGHTS.motorWorn, [10, 50, 200], "field-ohms"),
    sticks("regulator", false, "regulator does not ground the rotor", WEIGHTS.contactBurnt, "regulator-open"),
    {
      mode: "overcharging",
      title: "regulator set too high",
      value: { unit: "V", usual: [view.number("volts") * 1.15], min: 10, max: 60 },
      weight: WEIGHTS.contactStuck,
      repair: "replace",
      effects: (volts) => [{ does: "set", setting: "volts", value: volts }],
    },
    {
      mode: "no-output",
      title: "gives nothing: belt off or stator open",
      weight: WEIGHTS.loadOpen,
      repair: "replace",
      effects: () => [{ does: "hold", state: "stopped" }],
    },
    ...BRIDGE.flatMap(diodeFaults),
  ],
  symbol: alternatorSymbol,
  testPoints: (view) => loadTestPoints(view).map((point) => ({ ...point, touches: "stud" })),
};

/** One diode of the bridge, open or shorted: what the battery sees when stopped, and less output when running. */
function diodeFaults(key: string): readonly FaultMode[] {
  const repair = "replace";
  const name = key.replace("-", " diode ");
  return [
    {
      mode: `open-${key}`,
      title: `${name} open`,
      weight: WEIGHTS.diodeOpen / BRIDGE.length,
      repair,
      effects: () => [
        { does: "open", element: key },
        { does: "set", setting: "left", value: ONE_OPEN },
      ],
    },
    {
      mode: `shorted-${key}`,
      title: `${name} shorted`,
      weight: WEIGHTS.diodeShorted / BRIDGE.length,
      repair,
      effects: () => [
        { does: "set-ohms", element: key, ohms: SHORTED_OHMS },
        { does: "set", setting: "left", value: ONE_SHORTED },
      ],
    },
  ];
}

function alternatorSymbol(view: PartView): SymbolShape {
  const [output = "B+", exciter = "D+", minus = "B-"] = view.terminals;
  return {
    width: 8,
    height: 10,
    terminals: {
      [output]: { x: 3, y: 0, side: "up" },
      [exciter]: { x: 8, y: 5, side: "right" },
      [minus]: { x: 3, y: 10, side: "down" },
    },
    marks: [
      circle("symbol", 3, 5, 2.6),
      text("G", 3, 5.1, { points: 12, weight: 600, anchor: "middle" }),
      line("symbol-fine", 1.7, 6.3, 2.1, 5.9, 2.5, 6.3, 2.9, 6.7, 3.3, 6.3, 3.7, 5.9, 4.1, 6.3),
      line("symbol", 3, 0, 3, 2.4),
      line("symbol", 3, 7.6, 3, 10),
      line("symbol", 5.6, 5, 8, 5),
      text(output, 3.45, 1.45, { role: "text-quiet" }),
      text(exciter, 6, 4.5, { role: "text-quiet" }),
      text(minus, 3.45, 9.35, { role: "text-quiet" }),
    ],
    nameAt: { x: 5.8, y: 0.9, anchor: "start" },
  };
}
