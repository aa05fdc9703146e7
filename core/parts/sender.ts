import { line } from "../drawing/shapes.ts";
import { arrow, resistorBody } from "./bodies.ts";
import { type Control, doesNothing, type Kind, type ModelElement, type PartView } from "./kind.ts";
import { addsOhms, opens } from "./loadFaults.ts";
import { loadTestPoints, twoEnded } from "./outline.ts";
import { amount } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

const LEVELS = ["empty", "quarter", "half", "three-quarters", "full"] as const;
const MANUAL = "TM 5-3805-262-20, page 5-118: fuel sender 0-3 ohm empty to 84-92 full";
const LEAST_OHMS = 0.1;

const CONTROL: Control = { name: "", label: "Level", positions: LEVELS.map((name) => ({ name, joins: [] })) };

function ohmsAt(view: PartView, index: number): number {
  const [empty, full] = [view.number("empty"), view.number("full")];
  return Math.max(LEAST_OHMS, empty + ((full - empty) * index) / (LEVELS.length - 1));
}

/**
 * A sender for level, pressure or heat: ohms that its control sets, from empty to full in equal steps. A sender whose
 * ohms fall as the level rises has `full` below `empty`.
 */
export const sender: Kind = {
  name: "sender",
  title: "Sender",
  words: ["fuel level", "gauge", "float", "temperature", "oil pressure", "sensor"],
  letter: "B",
  role: "load",
  settings: [
    amount("empty", "ohms when empty", "ohm", 1.5, [0.1, 1e5], MANUAL),
    amount("full", "ohms when full", "ohm", 88, [0.1, 1e5], MANUAL),
  ],
  terminals: () => ["1", "2"],
  controls: () => [CONTROL],
  model(view) {
    const steps = LEVELS.flatMap((level, index): readonly ModelElement[] => [
      {
        key: `ohms-${level}`,
        a: view.terminals[0]!,
        b: `~${level}`,
        law: { law: "resistor", ohms: ohmsAt(view, index) },
        passes: "load",
      },
      { key: `at-${level}`, a: `~${level}`, b: "~arm", law: { law: "resistor", ohms: 0.02 }, passes: "contact" },
    ]);
    return [
      ...steps,
      { key: "arm", a: "~arm", b: view.terminals[1]!, law: { law: "resistor", ohms: 0.02 }, passes: "load" },
    ];
  },
  start: "",
  closed: (_view, _state, around) => [`at-${around.positions[""] ?? LEVELS[0]}`],
  next: (_view, state) => state,
  doing: doesNothing,
  faults: (view) => [
    opens("arm", "open inside", WEIGHTS.senderFault),
    addsOhms("arm", "dirty track, ohms added", WEIGHTS.senderFault / 2, [20, 100, 5]),
    {
      mode: "shorted",
      title: "shorted inside",
      weight: WEIGHTS.loadShorted,
      repair: "replace",
      effects: () => [{ does: "bridge", from: view.terminals[0]!, to: view.terminals[1]!, ohms: LEAST_OHMS }],
    },
    {
      mode: "float-stuck",
      title: "float stuck at empty",
      weight: WEIGHTS.senderFault / 2,
      repair: "replace",
      effects: () => [{ does: "stand", control: "", position: LEVELS[0] }],
    },
  ],
  symbol(view, _pose, look) {
    const level = line("symbol-fine", 3.2, 5.2, 3.6, 4.9, 4, 5.2, 4.4, 4.9, 4.8, 5.2, 5.2, 4.9);
    const shape = twoEnded(
      view.terminals,
      [...resistorBody(look, 2, 2, 6), ...arrow(0.2, 5.6, 3.8, 2.4), level],
      [2, 6],
    );
    return { ...shape, width: 6, nameAt: { x: 5.6, y: 3.6, anchor: "start" } };
  },
  testPoints: loadTestPoints,
};
