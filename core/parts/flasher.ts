import { box, line, terminalRing, text } from "../drawing/shapes.ts";
import type { Kind, ModelElement, PartView, Pose, SymbolShape } from "./kind.ts";
import { opens } from "./loadFaults.ts";
import { loadTestPoints } from "./outline.ts";
import { amount, by, yesNo } from "./settings.ts";
import { bodyBox } from "./switchSymbol.ts";
import { WEIGHTS } from "./weights.ts";

/** Amps through its contact that count as some lamp being on. */
const ANY_AMPS = 0.02;
/** Share of nominal volts below which an electronic flasher does not work (a guess). */
const AWAKE_SHARE = 0.5;

/**
 * A flasher, 49 in and 49a out. A steady state cannot blink: while it flashes its contact counts as closed, so that its
 * lamps are judged lit. `idle` draws nothing, `steady` is lit without blinking for want of load, `dark` is an electronic
 * one (terminal 31) that has no supply. Work is 1 while it flashes.
 */
export const flasher: Kind = {
  name: "flasher",
  title: "Flasher",
  words: ["indicator relay", "turn signal", "hazard", "blinker"],
  letter: "K",
  role: "control",
  settings: [
    amount("leastAmps", "flashes from", "A", by(1, 0.5), [0.02, 50], "common practice, no source"),
    yesNo("electronic", "electronic, with terminal 31", false, "common practice, no source"),
  ],
  terminals: (_part, settings) => (settings.electronic === true ? ["49", "49a", "31"] : ["49", "49a"]),
  controls: () => [],
  model(view) {
    const [feed, out, ground] = view.terminals;
    const contact: ModelElement = {
      key: "contact",
      a: feed!,
      b: out!,
      law: { law: "resistor", ohms: 0.02 },
      passes: "contact",
    };
    if (!isElectronic(view)) return [contact];
    const supply = {
      key: "supply",
      a: feed!,
      b: ground!,
      law: { law: "resistor", ohms: 1000 },
      passes: "load",
    } as const;
    return [contact, supply];
  },
  start: "idle",
  closed: (_view, state) => (state === "dark" ? [] : ["contact"]),
  next(view, _state, sees) {
    if (isElectronic(view) && sees.volts("supply") < AWAKE_SHARE * view.nominalVolts) return "dark";
    const amps = Math.abs(sees.amps("contact"));
    if (amps >= view.number("leastAmps")) return "flashing";
    return amps > ANY_AMPS ? "steady" : "idle";
  },
  doing(_view, state, sees) {
    const [volts, amps] = [sees.volts("contact"), sees.amps("contact")];
    const carries = Math.abs(amps) > ANY_AMPS;
    const flashes = state === "flashing" && carries;
    return { doing: flashes ? "flashing" : carries ? "on" : "off", amps, watts: volts * amps, work: flashes ? 1 : 0 };
  },
  faults: (view) => [
    {
      mode: "stuck-open",
      title: "does not close, lamps stay dark",
      weight: WEIGHTS.contactBurnt,
      repair: "replace",
      effects: () => [{ does: "stick", element: "contact", closed: false }],
    },
    {
      mode: "stuck-closed",
      title: "does not open, lamps stay lit",
      weight: WEIGHTS.contactStuck,
      repair: "replace",
      effects: () => [{ does: "hold", state: "steady" }],
    },
    {
      mode: "ohms",
      title: "contact burnt, ohms added",
      value: { unit: "ohm", usual: [0.5, 2], min: 0.01, max: 1000 },
      weight: WEIGHTS.contactPoor,
      repair: "replace",
      effects: (ohms) => [{ does: "add-ohms", element: "contact", ohms }],
    },
    ...(isElectronic(view) ? [opens("supply", "electronics dead", WEIGHTS.moduleOutput, "electronics-dead")] : []),
  ],
  symbol: flasherSymbol,
  testPoints: loadTestPoints,
};

function isElectronic(view: PartView): boolean {
  return view.yes("electronic") && view.terminals.length > 2;
}

function flasherSymbol(view: PartView, pose: Pose): SymbolShape {
  const [feed = "49", out = "49a", ground = "31"] = view.terminals;
  const third = isElectronic(view);
  const width = third ? 8 : 6;
  const isClosed = pose.closed.has("contact");
  return {
    width,
    height: 8,
    terminals: {
      [feed]: { x: 2, y: 0, side: "up" },
      [out]: { x: 2, y: 8, side: "down" },
      ...(third ? { [ground]: { x: 6, y: 8, side: "down" as const } } : {}),
    },
    marks: [
      bodyBox(width, 8),
      line("symbol", 2, 0, 2, 2.4),
      line("symbol", 2, 5.6, 2, 8),
      ...(isClosed ? [] : [line("contact-rest", 2, 5.6, 2, 2.4)]),
      line("contact-now", 2, 5.6, isClosed ? 2 : 0.8, isClosed ? 2.4 : 2.8),
      terminalRing(2, 2.4),
      terminalRing(2, 5.6),
      line("symbol-fine", 3, 4.5, 3.5, 4.5, 3.5, 3.5, 4.1, 3.5, 4.1, 4.5, 4.7, 4.5, 4.7, 3.5, 5.2, 3.5),
      ...(third ? [line("symbol-fine", 6, 4.7, 6, 8), box("symbol-fine", 5.5, 3.3, 1, 1.4)] : []),
      text(feed, 2.45, 1.45, { role: "text-quiet" }),
      text(out, 2.45, 7.35, { role: "text-quiet" }),
      ...(third ? [text(ground, 6.4, 7.35, { role: "text-quiet" })] : []),
    ],
    nameAt: { x: width + 0.6, y: 3.8, anchor: "start" },
  };
}
