import { type Refusal, refuse } from "../base/outcome.ts";
import type { Connector } from "../circuit/circuit.ts";
import { isInLine } from "../circuit/points.ts";
import type { Kind, Part, Position, Setting, Settings } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";

/** The table of a switch that has just been drawn: one contact, open at rest. */
const FIRST_POSITIONS: readonly Position[] = [
  { name: "off", joins: [] },
  { name: "on", joins: [["1", "2"]] },
];

/**
 * A part of a kind as it is first drawn: a setting without a usual value is its id, and a switch whose kind knows no
 * positions has one contact.
 */
export function firstPart(kind: Kind, id: string, given: Settings = {}): Part {
  const needed = kind.settings.filter(({ value }) => value.type !== "number" && value.usual === "");
  const settings: Settings = { ...Object.fromEntries(needed.map(({ name }) => [name, id])), ...given };
  const part: Part = { id, kind: kind.name, ...(Object.keys(settings).length > 0 && { settings }) };
  return kind.name === "switch" ? { ...part, positions: FIRST_POSITIONS } : part;
}

/**
 * How a part of a kind is turned when it is first taken up: a relay with 30 and 86 at the top, where the feed comes from;
 * all others as they are drawn.
 */
export function firstTurn(kind: Kind): 0 | 180 {
  return kind.name === "relay" ? 180 : 0;
}

/** The face of an in-line joint, its places in one row, without which its pins cannot fail; null for every other part. */
export function firstFace(kind: Kind, part: Part): Connector | null {
  if (!isInLine(part)) return null;
  const terminals = viewOf(kind, part, 0).terminals.map((terminal) => terminal.replace(/[ab]$/, ""));
  return { id: part.id, rows: [[...new Set(terminals)]] };
}

/**
 * Why a kind does not take these settings: `setting-unknown`, `setting-type`, `setting-limits`, `setting-choice`, or
 * `setting-needed` for an empty word where one must stand. Null where it takes them.
 */
export function settingsRefusal(kind: Kind, part: string, settings: Settings): Refusal | null {
  for (const [setting, value] of Object.entries(settings)) {
    const spec = kind.settings.find(({ name }) => name === setting);
    if (!spec) {
      const known = kind.settings.map(({ name }) => name).join(", ") || "none";
      return refuse("setting-unknown", { part, setting, kind: kind.name, known }).refusal;
    }
    const about = { part, setting: spec.label };
    const { value: rule, unit } = spec;
    if (!isOfType(rule.type, value)) return refuse("setting-type", { ...about, expected: EXPECTED[rule.type] }).refusal;
    if (rule.type === "number" && !(Number(value) >= rule.min && Number(value) <= rule.max)) {
      const { min, max } = rule;
      return refuse("setting-limits", { ...about, min, max, unit, value: Number(value) }).refusal;
    }
    if (rule.type === "choice" && !rule.choices.includes(String(value))) {
      return refuse("setting-choice", { ...about, choices: rule.choices.join(", "), value: String(value) }).refusal;
    }
    if (rule.type !== "number" && rule.usual === "" && value === "") return refuse("setting-needed", about).refusal;
  }
  return null;
}

const EXPECTED = { number: "a number", "yes-no": "true or false", choice: "a word", word: "a word" } as const;

function isOfType(type: keyof typeof EXPECTED, value: Setting): boolean {
  return typeof value === (type === "number" ? "number" : type === "yes-no" ? "boolean" : "string");
}
