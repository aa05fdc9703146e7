import { parseAmount } from "../../../core/base/amount.ts";
import { type Outcome, ok } from "../../../core/base/outcome.ts";
import { parsePoint } from "../../../core/circuit/points.ts";
import { readEntry } from "../../../core/diagnose/entry.ts";
import { probeOrder } from "../../../core/diagnose/order.ts";
import { batteryVoltsOf, parseLead, parseReading } from "../../../core/diagnose/readingText.ts";
import { parseWeight } from "../../../core/diagnose/weightText.ts";
import { readHappens, readWiggled } from "../../../core/diagnose/wiggleEntry.ts";
import { benchFor } from "../../../core/edit/bench.ts";
import { fillPins } from "../../../core/edit/commands/fillPins.ts";
import { apply } from "../../../core/edit/edit.ts";
import { pinList } from "../../../core/edit/pinList.ts";
import { parseMoves } from "../../../core/lesson/moveText.ts";
import { readTasks } from "../../../core/lesson/tasks.ts";
import { parseCondition } from "../../../core/live/condition.ts";
import { parseFault } from "../../../core/live/fault.ts";
import { parseColour } from "../../../core/trade/colours.ts";
import { parseGauge } from "../../../core/trade/gauge.ts";
import { pagesTyped } from "../../../renderer/printed/pageNumbers.ts";
import type { Door } from "../door.ts";
import { spoiltText } from "../mutate.ts";
import { hornCircuit } from "./given.ts";

/** Everything that is typed into one field or written after one switch of the command line, each with texts that are right. */
const FIELDS: Readonly<
  Record<string, readonly [read: (text: string) => Outcome<unknown>, ...good: readonly string[]]>
> = {
  amount: [(text) => parseAmount(text, "V"), "11.9", "250 mV", "1,2k"],
  point: [(text) => parsePoint(hornCircuit(), text), "K1.30", "X20-1", "F1.1"],
  colour: [(text) => parseColour(text, "iec60757"), "RD/YE", "bnwh", "gn-ye"],
  gauge: [parseGauge, "1.5 mm2", "18 AWG", "0,75"],
  condition: [
    (text) => parseCondition(hornCircuit(), text),
    "S1=pressed,battery:off",
    "apart:X20",
    "out:F1,ambient:80",
  ],
  fault: [(text) => parseFault(hornCircuit(), text), "W1:ohms=2", "F1:blown", "W15:open"],
  weight: [(text) => parseWeight(text, hornCircuit()), "K1:welded=3: bulletin 12", "relay=2: own records"],
  reading: [
    (text) => parseReading(hornCircuit(), text),
    "X20-1 @ S1=pressed : 11.9V",
    "F1 @ : whole",
    "K1 fed direct @ : works",
  ],
  lead: [(text) => parseLead(hornCircuit(), text), "X20-1", "battery-", "body"],
  battery: [(text) => batteryVoltsOf(hornCircuit(), text), "12.6", "12,4 V"],
  moves: [
    (text) => parseMoves(hornCircuit(), text, {}),
    "throw S1=pressed",
    "probe X20-1 @ S1=pressed",
    "verdict W15:open",
  ],
  tasks: [readTasks, "Voltage drop on the ground side: Horns; Rear lamps\n# no\nRelays: Horns"],
  wiggle: [(text) => readWiggled(text, 12), "X5 : 2.1..11.8", "W3:4..4.5"],
  happens: [readHappens, "hot,wet", "cold"],
  pages: [(text) => pagesTyped(text, 500), "3, 5-8", "1-500"],
};

const steps = () => {
  const circuit = hornCircuit();
  const check = circuit.checks.find(({ id }) => id === "low-horn")!;
  return probeOrder(circuit, { check, word: "dead" }).steps;
};
let known: ReturnType<typeof steps> | null = null;

/** What a hand types, or pastes into a field. */
export const TYPED_DOORS: readonly Door[] = [
  {
    name: "typed",
    kind: "text",
    seeds: async () => Object.entries(FIELDS).flatMap(([name, [, ...good]]) => good.map((text) => `${name}\n${text}`)),
    make: (lots, seeds) => {
      const seed = String(lots.oneOf(seeds));
      const text = seed.slice(seed.indexOf("\n") + 1);
      // A right text in another field is a likely slip.
      return `${lots.happens(0.3) ? lots.oneOf(Object.keys(FIELDS)) : seed.split("\n")[0]}\n${spoiltText(text, seeds, lots)}`;
    },
    open: (input) => {
      const text = String(input);
      const at = text.indexOf("\n");
      const field = text.slice(0, at);
      const [read] = (Object.hasOwn(FIELDS, field) && FIELDS[field]) || [() => ok(null)];
      return read(text.slice(at + 1));
    },
    share: 22,
    mostMs: 2_000,
  },
  {
    name: "readings of a row",
    kind: "text",
    seeds: async () => ["11.9", "dim 7.2", "5 = 12.6", "1=11.9 2=0.1", "ok", "open", "1.2 ohm 0.4 A"],
    open: (input) => {
      known ??= steps();
      const text = String(input);
      return readEntry(text, known[text.length % known.length]!, known, 12);
    },
    share: 6,
    mostMs: 2_000,
  },
  {
    name: "pasted pin list",
    kind: "text",
    seeds: async () => [
      "1 RD/YE horn relay\n2 BN ground; 3 BK/WH lamp / 4 gn",
      "Pin 1: DK GRN/LT BLU feed\r\npin 2. Brown",
      "30 RD\n85 BN\n86 BK",
      `${hornCircuit().connectors[0]!.rows[0]![0]} YE`,
    ],
    open: (input) => {
      const circuit = hornCircuit();
      const rows = pinList(String(input), circuit.colourCodes);
      const wrong = rows.find((row) => row.wrong !== null)?.wrong;
      const bench = benchFor(circuit);
      const edit = fillPins(bench, circuit.connectors[0]!.id, String(input));
      if (edit.ok) {
        const applied = apply(bench, edit.value);
        if (!applied.ok) return applied;
      }
      return wrong ? { ok: false, refusal: wrong } : edit;
    },
    share: 7,
    mostMs: 2_000,
  },
];
