import { type Refusal, refuse } from "../core/base/outcome.ts";
import type { Circuit } from "../core/circuit/circuit.ts";
import { kindOf } from "../core/parts/catalogue.ts";
import type { End, Kind, Part, PartView, Position, Setting, SettingSpec } from "../core/parts/kind.ts";
import { viewOf } from "../core/parts/view.ts";

/**
 * What is wrong inside one part, measured by its kind: unknown kind or setting, a value outside its limits, a terminal
 * or position that is not there. Null where all is well.
 */
export function partRefusal(circuit: Circuit, part: Part, path: string): Refusal | null {
  const kind = kindOf(part.kind);
  if (!kind) return refuse("part-kind", { path, part: part.id, kind: part.kind }).refusal;
  const settings = settingsRefusal(kind, part, path);
  if (settings) return settings;
  const view = viewOf(kind, part, circuit.nominalVolts);
  const { terminals } = view;
  return (
    idleRefusal(kind, part, path) ??
    twice(terminals, `${path}.terminals`, "terminal") ??
    (part.terminals ? terminalsRefusal(kind, view, path) : null) ??
    positionsRefusal(part, part.positions ?? [], terminals, `${path}.positions`) ??
    controlsRefusal(part, terminals, path) ??
    moduleRefusal(part, terminals, path)
  );
}

/** Refuses what the kind would pass over without a word: positions of a lamp, pins of a switch. */
function idleRefusal(kind: Kind, part: Part, path: string): Refusal | null {
  const about = { path, part: part.id, kind: kind.name };
  if (part.positions && part.controls) return refuse("part-positions-twice", about).refusal;
  if ((part.positions || part.controls) && kind.controls(part).length === 0) {
    return refuse("part-positions-idle", about).refusal;
  }
  return (part.pins || part.table) && kind.role !== "electronics" ? refuse("part-pins-idle", about).refusal : null;
}

/** Refuses terminals of its own that the kind has no use for, or too few of them. */
function terminalsRefusal(kind: Kind, view: PartView, path: string): Refusal | null {
  const { part, terminals } = view;
  const isEnd = (end: End): boolean => /^[~=]/.test(end) || terminals.includes(end);
  const isModelled = kind.model(view).every(({ a, b }) => a !== undefined && b !== undefined && isEnd(a) && isEnd(b));
  const pose = { closed: new Set<string>(), rest: new Set<string>(), state: kind.start };
  const drawn = isModelled ? Object.keys(kind.symbol(view, pose, "iec").terminals) : [];
  if (drawn.length === terminals.length && terminals.every((terminal) => drawn.includes(terminal))) return null;
  const usual = kind.terminals(part, part.settings ?? {}).join(", ");
  return refuse("part-terminals", { path: `${path}.terminals`, part: part.id, kind: kind.name, usual }).refusal;
}

function settingsRefusal(kind: Kind, part: Part, path: string): Refusal | null {
  const written = new Map(Object.entries(part.settings ?? {}));
  for (const [name, value] of written) {
    const spec = kind.settings.find((candidate) => candidate.name === name);
    const at = { path: `${path}.settings.${name}`, part: part.id, setting: spec?.label ?? name };
    if (!spec) {
      const known = kind.settings.map((candidate) => candidate.name).join(", ") || "none";
      return refuse("setting-unknown", { ...at, kind: kind.name, known }).refusal;
    }
    const wrong = settingRefusal(spec, value, at);
    if (wrong) return wrong;
  }
  for (const spec of kind.settings) {
    if (isRequired(spec) && !written.get(spec.name)) {
      return refuse("setting-missing", { path: `${path}.settings`, part: part.id, setting: spec.label }).refusal;
    }
  }
  return null;
}

/** A setting that has no usual value must be written. */
function isRequired(spec: SettingSpec): boolean {
  return spec.value.type !== "number" && spec.value.usual === "";
}

function settingRefusal(spec: SettingSpec, value: Setting, at: Readonly<Record<string, string>>): Refusal | null {
  const rule = spec.value;
  const wanted = rule.type === "number" ? "number" : rule.type === "yes-no" ? "boolean" : "string";
  if (typeof value !== wanted) {
    const words = { number: "a number", boolean: "true or false", string: "a word" };
    return refuse("setting-type", { ...at, expected: words[wanted] }).refusal;
  }
  if (rule.type === "number" && (Number(value) < rule.min || Number(value) > rule.max)) {
    const { min, max } = rule;
    return refuse("setting-limits", { ...at, value: Number(value), min, max, unit: spec.unit }).refusal;
  }
  if (rule.type === "choice" && rule.choices.length > 0 && !rule.choices.includes(String(value))) {
    return refuse("setting-choice", { ...at, value: String(value), choices: rule.choices.join(", ") }).refusal;
  }
  return null;
}

/** Refuses a name that stands twice in a list of names. */
export function twice(names: readonly string[], path: string, what: string): Refusal | null {
  const seen = new Set<string>();
  for (const [index, name] of names.entries()) {
    if (seen.has(name)) return refuse("twice", { path: `${path}[${index}]`, what, id: name }).refusal;
    seen.add(name);
  }
  return null;
}

function positionsRefusal(
  part: Part,
  positions: readonly Position[],
  terminals: readonly string[],
  path: string,
): Refusal | null {
  const names = positions.map((position) => position.name);
  const again = twice(names, path, "position");
  if (again) return again;
  for (const [index, position] of positions.entries()) {
    const at = `${path}[${index}]`;
    const back = position.springsBackTo;
    if (back !== undefined && (back === position.name || !names.includes(back))) {
      return refuse("position-unknown", { path: `${at}.springsBackTo`, part: part.id, position: back }).refusal;
    }
    if (index === 0 && back !== undefined) {
      return refuse("rest-springs-back", { path: at, part: part.id, position: position.name }).refusal;
    }
    const wrong = joinsRefusal(part, position.joins, terminals, `${at}.joins`);
    if (wrong) return wrong;
  }
  return null;
}

function controlsRefusal(part: Part, terminals: readonly string[], path: string): Refusal | null {
  const controls = part.controls ?? [];
  const names = controls.map((control) => control.name);
  const again = twice(names, `${path}.controls`, "control");
  if (again) return again;
  for (const [index, control] of controls.entries()) {
    const wrong = positionsRefusal(part, control.positions, terminals, `${path}.controls[${index}].positions`);
    if (wrong) return wrong;
  }
  return null;
}

function joinsRefusal(
  part: Part,
  joins: readonly (readonly [string, string])[],
  terminals: readonly string[],
  path: string,
): Refusal | null {
  for (const [index, pair] of joins.entries()) {
    for (const terminal of pair) {
      const wrong = terminalRefusal(part, terminal, terminals, `${path}[${index}]`);
      if (wrong) return wrong;
    }
    if (pair[0] === pair[1]) {
      return refuse("join-itself", { path: `${path}[${index}]`, part: part.id, terminal: pair[0] }).refusal;
    }
  }
  return null;
}

function moduleRefusal(part: Part, terminals: readonly string[], path: string): Refusal | null {
  for (const pin of Object.keys(part.pins ?? {})) {
    const wrong = terminalRefusal(part, pin, terminals, `${path}.pins`);
    if (wrong) return wrong;
  }
  for (const [index, line] of (part.table ?? []).entries()) {
    const at = `${path}.table[${index}]`;
    for (const pin of Object.keys(line.when)) {
      const wrong = terminalRefusal(part, pin, terminals, `${at}.when`);
      if (wrong) return wrong;
    }
    const wrong = joinsRefusal(part, line.joins, terminals, `${at}.joins`);
    if (wrong) return wrong;
  }
  return null;
}

function terminalRefusal(part: Part, terminal: string, terminals: readonly string[], path: string): Refusal | null {
  if (terminals.includes(terminal)) return null;
  return refuse("point-terminal", { path, part: part.id, terminal, terminals: terminals.join(", ") }).refusal;
}
