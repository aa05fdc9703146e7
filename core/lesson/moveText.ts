import { type Outcome, ok, refuse } from "../base/outcome.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { controlAt, parsePoint } from "../circuit/points.ts";
import { fuseAcross, lampForFuse } from "../diagnose/inPlace.ts";
import type { Probe } from "../diagnose/reading.ts";
import { parseLead } from "../diagnose/readingText.ts";
import type { Instrument } from "../diagnose/step.ts";
import { testPointsOf } from "../diagnose/testPoint.ts";
import type { Lead } from "../live/attachment.ts";
import { parseCondition } from "../live/condition.ts";
import { leadPlace } from "./leadPlace.ts";
import type { Move, ProbeMove } from "./move.ts";

/** Verbs that name one thing, and the move of each. */
const ON_ONE: Readonly<Record<string, (id: string) => Move>> = {
  try: (check) => ({ do: "try", check }),
  open: (access) => ({ do: "open", access }),
  unplug: (connector) => ({ do: "unplug", connector }),
  "plug in": (connector) => ({ do: "plug-in", connector }),
  "take out": (part) => ({ do: "take-out", part }),
  "put in": (part) => ({ do: "put-in", part }),
  renew: (part) => ({ do: "renew", part }),
  look: (part) => sensed(part, "look"),
  listen: (part) => sensed(part, "listen"),
  scan: (part) => sensed(part, "scan tool"),
  feed: (part) => sensed(part, "fed direct"),
  "feed loose": (part) => sensed(part, "fed loose"),
  swap: (part) => sensed(part, "like relay"),
};

function sensed(part: string, instrument: Instrument): ProbeMove {
  return { do: "probe", red: part, black: "battery -", instrument, lampTo: null };
}

/**
 * Reads what a learner types, as moves from a condition on: `throw S1=on`, `try middle-open-own`, `engine on`, `open vent-switch`,
 * `unplug X5`, `take out F4`, `renew F4`, `probe X5-6`, `probe F4.1/F4.2`, `ohms X5-4/X5-5`, `clamp X5-6`, `lamp battery+/X5-1`, `look F4`, `listen K1`, `scan U1`, `feed M3`,
 * `swap K1`, `hint`, `verdict W13:open by 1,3`. With `@ S1=on,S5=open` behind it the vehicle is first brought there, which are
 * moves of their own. Refuses `move-spelling`, and what the circuit does not have.
 */
export function parseMoves(circuit: Circuit, text: string, now: Condition): Outcome<readonly Move[]> {
  const [, typed = "", setting] = /^([^@]*)(?:@(.*))?$/s.exec(text.trim()) ?? [];
  const before = setting === undefined ? ok([]) : movesTo(circuit, now, setting.trim());
  if (!before.ok) return before;
  const move = parseMove(circuit, typed.trim().replace(/\s+/g, " "), now);
  return move.ok ? ok([...before.value, ...move.value]) : move;
}

function parseMove(circuit: Circuit, typed: string, now: Condition): Outcome<readonly Move[]> {
  const wrong = refuse("move-spelling", { text: typed });
  if (typed === "hint") return ok([{ do: "hint" }]);
  if (/^engine (on|off)$/.test(typed)) return ok([{ do: "engine", running: typed.endsWith("on") }]);
  const [, thrown] = /^throw (.+)$/.exec(typed) ?? [];
  if (thrown !== undefined) return throwsOf(circuit, thrown);
  const [, verdict, proof = ""] = /^verdict (\S+)(?: by ([\d ,]+))?$/.exec(typed) ?? [];
  if (verdict !== undefined)
    return ok([{ do: "verdict", suspect: verdict, proof: (proof.match(/\d+/g) ?? []).map(Number) }]);
  const [, meter, leads] = /^(probe|ohms|clamp|lamp|4 A lamp|0\.25 A lamp) (.+)$/.exec(typed) ?? [];
  if (meter !== undefined && leads !== undefined) return probeOf(circuit, meter, leads, now);
  const [, verb = "", thing = ""] = /^(.+) (\S+)$/.exec(typed) ?? [];
  return Object.hasOwn(ON_ONE, verb) ? ok([ON_ONE[verb]!(thing)]) : wrong;
}

/** `S1=on,S5=open`: one throw each, in that order. */
function throwsOf(circuit: Circuit, text: string): Outcome<readonly Move[]> {
  const condition = parseCondition(circuit, text);
  if (!condition.ok) return condition;
  const { set, ...more } = condition.value;
  if (!set || Object.keys(more).length > 0) return refuse("move-spelling", { text: `throw ${text}` });
  return ok(Object.entries(set).map(([control, position]) => ({ do: "throw", control, position })));
}

/** Moves that bring the vehicle from one condition to another that is typed. Refuses `move-condition` for what no learner can set. */
function movesTo(circuit: Circuit, now: Condition, typed: string): Outcome<readonly Move[]> {
  const parsed = parseCondition(circuit, typed === "rest" ? "" : typed);
  if (!parsed.ok) return parsed;
  const { set = {}, apart = [], out = [], running = false, ...more } = parsed.value;
  if (Object.keys(more).length > 0) return refuse("move-condition", { text: typed });
  const stands = now.set ?? {};
  const isApart = now.apart ?? [];
  const isOut = now.out ?? [];
  const back = Object.keys(stands).filter((key) => set[key] === undefined);
  return ok([
    ...isApart.filter((id) => !apart.includes(id)).map((connector): Move => ({ do: "plug-in", connector })),
    ...isOut.filter((id) => !out.includes(id)).map((part): Move => ({ do: "put-in", part })),
    ...back.map((control): Move => ({ do: "throw", control, position: controlAt(circuit, control)?.rest ?? "" })),
    ...(running === (now.running ?? false) ? [] : [{ do: "engine", running } as const]),
    ...Object.entries(set)
      .filter(([control, position]) => (stands[control] ?? controlAt(circuit, control)?.rest) !== position)
      .map(([control, position]): Move => ({ do: "throw", control, position })),
    ...apart.filter((id) => !isApart.includes(id)).map((connector): Move => ({ do: "unplug", connector })),
    ...out.filter((id) => !isOut.includes(id)).map((part): Move => ({ do: "take-out", part })),
  ]);
}

function probeOf(circuit: Circuit, meter: string, leads: string, now: Condition): Outcome<readonly Move[]> {
  const [first = "", second = ""] = leads.split("/").map((lead) => lead.trim());
  const one = leadOf(circuit, first, now);
  if (!one.ok) return one;
  const other = second === "" ? ok<Lead>("battery -") : leadOf(circuit, second, now);
  if (!other.ok) return other;
  const [red, black] = [one.value, other.value];
  const unlit = METERS[meter];
  if (unlit) return ok([{ do: "probe", red, black, instrument: unlit, lampTo: null }]);
  const fuse = fuseAcross(circuit, red, black);
  if (fuse !== null) {
    const instrument = lampTyped(meter, lampForFuse(circuit, fuse));
    return ok([{ do: "probe", red, black, instrument, lampTo: "black" }]);
  }
  const isFromPlus = red === "battery +";
  if (!isFromPlus && black !== "battery -") return refuse("move-no-fuse", { red, black });
  const point = isFromPlus ? black : red;
  const carried = testPointsOf(circuit).find((each) => each.point === point)?.lamp ?? "4 A lamp";
  const lampTo = isFromPlus ? "battery +" : "battery -";
  return ok([{ do: "probe", red: point, black: "battery -", instrument: lampTyped(meter, carried), lampTo }]);
}

/** What is read without a lamp, by its verb. */
const METERS: Readonly<Record<string, Instrument>> = { probe: "meter volts", ohms: "meter ohms", clamp: "clamp" };

/** The lamp that is named, else the one that the place carries. */
function lampTyped(meter: string, carried: "4 A lamp" | "0.25 A lamp"): "4 A lamp" | "0.25 A lamp" {
  return meter === "4 A lamp" || meter === "0.25 A lamp" ? meter : carried;
}

/** Where a lead goes that is typed. */
function leadOf(circuit: Circuit, typed: string, now: Condition): Outcome<Lead> {
  if (/^battery/.test(typed)) return parseLead(circuit, typed);
  const point = parsePoint(circuit, typed);
  return point.ok ? ok(leadPlace(circuit, point.value.id, now)) : point;
}

/** The spelling of a move, as `parseMoves` reads it. */
export function moveText(move: Move): string {
  switch (move.do) {
    case "throw":
      return `throw ${move.control}=${move.position}`;
    case "try":
      return `try ${move.check}`;
    case "engine":
      return `engine ${move.running ? "on" : "off"}`;
    case "open":
      return `open ${move.access}`;
    case "unplug":
      return `unplug ${move.connector}`;
    case "plug-in":
      return `plug in ${move.connector}`;
    case "take-out":
      return `take out ${move.part}`;
    case "put-in":
      return `put in ${move.part}`;
    case "renew":
      return `renew ${move.part}`;
    case "probe":
      return leadsText(move);
    case "hint":
      return "hint";
    case "verdict":
      return `verdict ${move.suspect}${move.proof.length === 0 ? "" : ` by ${move.proof.join(", ")}`}`;
  }
}

const VERBS: Readonly<Record<Instrument, string>> = {
  "meter volts": "probe",
  "meter ohms": "ohms",
  clamp: "clamp",
  "4 A lamp": "4 A lamp",
  "0.25 A lamp": "0.25 A lamp",
  look: "look",
  listen: "listen",
  "scan tool": "scan",
  "fed direct": "feed",
  "fed loose": "feed loose",
  "like relay": "swap",
};

/** What is read or done, as it is typed, without the condition: `lamp battery+/X5-1`. */
export function leadsText({ red, black, instrument, lampTo }: Omit<Probe, "condition">): string {
  const spelled = (lead: string): string => lead.replace(" ", "");
  const verb = VERBS[instrument];
  if (lampTo === "battery +") return `${verb} battery+/${red}`;
  return black === "battery -" ? `${verb} ${spelled(red)}` : `${verb} ${spelled(red)}/${spelled(black)}`;
}
