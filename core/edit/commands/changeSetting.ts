import { parseAmount } from "../../base/amount.ts";
import type { PartId } from "../../base/ids.ts";
import { type Outcome, ok, refuse } from "../../base/outcome.ts";
import { EDIT_NAMES } from "../../base/words/edit.ts";
import { partAt } from "../../circuit/points.ts";
import { kindOf } from "../../parts/catalogue.ts";
import type { Part, Setting, SettingSpec, Settings } from "../../parts/kind.ts";
import { orderRefusal } from "../../parts/rising.ts";
import type { Bench } from "../bench.ts";
import type { Change } from "../change.ts";
import type { Edit } from "../edit.ts";
import { alreadySo, editOf, goingOn, nameOf, without } from "../editOf.ts";
import { MOST_LABEL } from "./relabelPart.ts";

/**
 * Gives a part's setting the value that was typed, "20A", "1k2" or one of its words; the empty text is the usual value.
 * Refuses `part-unknown`, `setting-unknown`, a value that the kind does not take, `setting-order`, and one that would leave a
 * wire without its terminal.
 */
export function changeSetting(bench: Bench, id: PartId, setting: string, typed: string): Outcome<Edit> {
  const part = partAt(bench.circuit, id);
  const kind = part && kindOf(part.kind);
  if (!kind) return refuse("part-unknown", { part: id });
  const spec = kind.settings.find(({ name }) => name === setting);
  if (!spec) {
    const known = kind.settings.map(({ name }) => name).join(", ") || "none";
    return refuse("setting-unknown", { part: id, kind: kind.name, setting, known });
  }
  const value = settingOf(part, spec, typed);
  if (!value.ok) return value;
  const order = orderRefusal(kind, withSetting(part, setting, value.value), bench.circuit.nominalVolts);
  if (order) return { ok: false, refusal: order };
  if (part.settings?.[setting] === value.value) return alreadySo(`${spec.label} of ${id}`);
  const name = EDIT_NAMES.changeSetting(nameOf(bench.circuit, id), spec.label, wordsOf(spec, value.value));
  return editOf(bench, name, [goingOn(bench), settingChange(part, setting, value.value)]);
}

function withSetting(part: Part, setting: string, value: Setting | undefined): Part & { readonly settings: Settings } {
  const settings = value === undefined ? without(part.settings, setting) : { ...part.settings, [setting]: value };
  return { ...part, settings };
}

/** A setting keeps its place among the others; the last one to go takes the whole field along. */
function settingChange(part: Part, setting: string, value: Setting | undefined): Change {
  const { settings } = withSetting(part, setting, value);
  const isEmpty = Object.keys(settings).length === 0;
  return { change: "item", list: "parts", id: part.id, field: "settings", ...(!isEmpty && { value: settings }) };
}

/** The value that was typed, or undefined for the usual one. */
function settingOf(part: Part, spec: SettingSpec, typed: string): Outcome<Setting | undefined> {
  const rule = spec.value;
  const about = { part: part.id, setting: spec.label };
  const text = typed.trim();
  if (text === "") {
    const isNeeded = rule.type === "word" && rule.usual === "";
    return isNeeded ? refuse("setting-needed", about) : ok(undefined);
  }
  switch (rule.type) {
    case "number": {
      const amount = parseAmount(text, spec.unit);
      if (!amount.ok) return amount;
      const { min, max } = rule;
      const isWithin = amount.value >= min && amount.value <= max;
      return isWithin ? amount : refuse("setting-limits", { ...about, min, max, unit: spec.unit, value: amount.value });
    }
    case "choice": {
      const chosen = rule.choices.find((choice) => choice.toLowerCase() === text.toLowerCase());
      return chosen === undefined
        ? refuse("setting-choice", { ...about, choices: rule.choices.join(", "), value: text })
        : ok(chosen);
    }
    case "yes-no": {
      const word = text.toLowerCase();
      if (word === EDIT_NAMES.yes) return ok(true);
      const choices = `${EDIT_NAMES.yes}, ${EDIT_NAMES.no}`;
      return word === EDIT_NAMES.no ? ok(false) : refuse("setting-choice", { ...about, choices, value: text });
    }
    case "word":
      return text.length > MOST_LABEL ? refuse("label-long", { most: MOST_LABEL, length: text.length }) : ok(text);
  }
}

function wordsOf(spec: SettingSpec, value: Setting | undefined): string {
  if (value === undefined) return EDIT_NAMES.usual;
  if (typeof value === "boolean") return value ? EDIT_NAMES.yes : EDIT_NAMES.no;
  return spec.unit === "" ? String(value) : `${value} ${spec.unit}`;
}
