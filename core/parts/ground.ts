import { line } from "../drawing/shapes.ts";
import { doesNothing, type Kind } from "./kind.ts";
import { addsOhms, opens } from "./loadFaults.ts";
import { amount, choice } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

const BODIES = ["chassis", "engine", "cab", "trailer"] as const;

/** A ground point: a stud, and the body it is bolted to. All ground points of one body share that body. */
export const ground: Kind = {
  name: "ground",
  title: "Ground point",
  words: ["earth", "mass", "body ground", "chassis", "stud"],
  letter: "GP",
  role: "join",
  settings: [
    choice("body", "body it is bolted to", "chassis", BODIES, "common practice, no source"),
    amount("contactOhms", "ohms from stud to body", "ohm", 0.001, [0.00001, 10], "common practice, no source"),
  ],
  terminals: () => ["stud", "body"],
  controls: () => [],
  model(view) {
    const [stud = "stud", body = "body"] = view.terminals;
    const shared = `=body:${view.word("body")}`;
    return [
      {
        key: "stud",
        a: stud,
        b: shared,
        law: { law: "resistor", ohms: view.number("contactOhms") },
        passes: "conductor",
      },
      { key: "body", a: body, b: shared, law: { law: "joint" }, passes: "conductor" },
    ];
  },
  start: "",
  closed: () => [],
  next: (_view, state) => state,
  doing: doesNothing,
  faults: () => [
    {
      ...addsOhms("stud", "corroded, ohms added", WEIGHTS.groundCorroded, [2, 20, 0.3, 0.03], "corroded"),
      repair: "clean",
    },
    opens("stud", "off its stud", WEIGHTS.groundOff, "off", "clean"),
  ],
  symbol(view) {
    const [stud = "stud", body = "body"] = view.terminals;
    return {
      width: 4,
      height: 3,
      terminals: { [stud]: { x: 2, y: 0, side: "up" }, [body]: { x: 2, y: 3, side: "down" } },
      marks: [
        line("symbol", 2, 0, 2, 1.8),
        line("symbol", 0.4, 1.8, 3.6, 1.8),
        ...[1.2, 2.2, 3.2].map((x) => line("symbol", x, 1.8, x - 0.8, 3)),
      ],
      nameAt: { x: 4.4, y: 2, anchor: "start" },
    };
  },
  testPoints(view) {
    const [stud = "stud", body = "body"] = view.terminals;
    return [
      { terminal: stud, touches: "stud" },
      { terminal: body, touches: "bare metal" },
    ];
  },
};
