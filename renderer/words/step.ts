import type { Minutes } from "../../core/base/units.ts";
import { SCAN_WORDS } from "../../core/base/words/scan.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { controlAt, controlsOf } from "../../core/circuit/points.ts";
import { feedingOf } from "../../core/diagnose/feeding.ts";
import { type Act, isAct, type ProbeOrder, type Step } from "../../core/diagnose/step.ts";
import { conditionList, controlTitle } from "./condition.ts";
import { minutesText } from "./figures.ts";

/** Controls that some row of an order moves, in the order they first appear. */
export function movedIn({ steps }: ProbeOrder): readonly string[] {
  const keys = steps.flatMap(({ settings, sweepOf }) => [
    ...settings.flatMap(({ condition }) => Object.keys(condition.set ?? {})),
    ...(sweepOf === null ? [] : [sweepOf]),
  ]);
  return [...new Set(keys)];
}

/** What to set for a row: "Key on, S6 at rest (let go)". Controls that other rows move and this one does not are named. */
export function settingWords(circuit: Circuit, condition: Condition, moved: readonly string[]): string {
  const said = conditionList(circuit, condition);
  const resting = controlsOf(circuit)
    .filter(({ key, rest }) => moved.includes(key) && (condition.set?.[key] ?? rest) === rest)
    .map((control) => `${controlTitle(circuit, control)} ${control.rest === "rest" ? "at rest" : control.rest}`);
  const words = [...said, ...resting].join(", ");
  return words === "" ? "All at rest" : words.charAt(0).toUpperCase() + words.slice(1);
}

/** What is held and set while a control is swept: all but the swept control itself. */
export function sweepSetting(circuit: Circuit, { settings, sweepOf }: Step): string {
  const [first] = settings;
  if (!first || sweepOf === null) return "";
  const { [sweepOf]: _, ...others } = first.condition.set ?? {};
  return settingWords(circuit, { ...first.condition, set: others }, []);
}

/** The control that a sweep goes through, as the strip names it. */
export function sweptWords(circuit: Circuit, key: string): string {
  const control = controlAt(circuit, key);
  return control ? controlTitle(circuit, control) : key;
}

/** What a closed row says of its leads, or of what is looked at or listened to. */
export function closedLeads(step: Step): string {
  const { point, black, lampTo, instrument } = step;
  if (instrument === "look") return `look at ${point}`;
  if (instrument === "listen") return `listen to ${point}`;
  if (instrument === "scan tool") return SCAN_WORDS.closed(point);
  if (instrument === "like relay") return `a like relay in place of ${point}`;
  if (instrument === "fed loose") return `${point} off its mechanism, fed by a fused jumper`;
  if (instrument === "fed direct") return `${point} fed by a fused jumper`;
  if (lampTo === "battery +") return `${instrument} from battery + to ${point}`;
  if (lampTo === "battery -") return `${instrument} from ${point} to battery −`;
  if (lampTo === "black") return `${instrument} in place of the fuse, ${point} to ${black}`;
  if (instrument === "clamp") return `clamp round the wire at ${point}`;
  const leads = `red ${point}, black ${black.replace(" -", " −")}`;
  return instrument === "meter ohms" ? `ohms, ${leads}` : leads;
}

/** Where red, black and the lamp go. A lamp row is read by eye with the lamp between the two. */
export function leadWords({ point, black, lampTo, instrument }: Step): {
  readonly red: string;
  readonly black: string;
  readonly lamp: string | null;
} {
  const minus = (lead: string): string => lead.replace(" -", " −");
  const lamps = {
    "battery +": `${instrument}: battery + to ${point}`,
    "battery -": `${instrument}: ${point} to battery −`,
    black: `${instrument} in place of the fuse: ${point} to ${black}`,
  };
  return { red: point, black: minus(black), lamp: lampTo === null ? null : lamps[lampTo] };
}

/** Less than this is no detour worth a word, minutes. */
const NO_DETOUR: Minutes = 0.5;

/** What it costs to read a row now in place of the one that is offered. */
export function detourWords(detour: Minutes, offered: number): string {
  if (detour < NO_DETOUR) return `As good as step ${offered} first.`;
  return `About ${minutesText(Math.max(1, Math.round(detour)))} more in all than with step ${offered} first.`;
}

/** What is done in a row without a meter. */
export function senseWords(circuit: Circuit, { point, instrument, settings }: Step): string {
  if (instrument === "like relay") return `Put a like relay in place of ${point} and try it again`;
  if (isAct(instrument)) return feedWords(circuit, point, instrument);
  if (instrument === "listen") return `Listen to ${point} while the control is thrown`;
  if (instrument === "scan tool") return SCAN_WORDS.ask(point);
  const { word } = settings[0]?.expect ?? {};
  if (word === "whole") return `Pull ${point} and look at it`;
  return word === "sound" ? `Part ${point}, look into both halves and tug at the wires` : `Look where ${point} stands`;
}

function feedWords(circuit: Circuit, load: string, act: Act): string {
  const feeding = feedingOf(circuit)(load);
  const first = act === "fed loose" ? `Take ${load} off what it drives, part` : "Part";
  const places = feeding ? `battery + to ${feeding.plus}, ${feeding.minus} to battery −, then the other way` : "";
  return `${first} ${feeding?.plug ?? "its plug"} and feed ${load} with a fused jumper: ${places}`;
}
