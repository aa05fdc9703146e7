import { closedContacts, contactModel, drawnControls, switchFaults, terminalsIn } from "./contacts.ts";
import { type Control, doesNothing, type Kind, type Part, type SettingSpec } from "./kind.ts";
import type { Operator } from "./operator.ts";
import { loadTestPoints } from "./outline.ts";
import { amount, choice } from "./settings.ts";
import { switchSymbol } from "./switchSymbol.ts";

/** What is special about one sort of switch; all else is its continuity table. */
export interface SwitchSpec {
  readonly name: string;
  readonly title: string;
  readonly words: readonly string[];
  readonly operator: Operator;
  readonly settings?: readonly SettingSpec[];
  /** Controls of a part that writes no positions of its own; none where every part must write them. */
  usualControls?(part: Part): readonly Control[];
}

const CONTACT_OHMS = amount(
  "contactOhms",
  "ohms of a closed contact",
  "ohm",
  0.015,
  [0.0001, 10],
  "common practice, no source",
);

/**
 * A switch: a kind whose contacts are the continuity table of its controls. A part without positions has no controls and
 * no contacts, and its terminals are joined to nothing; the check of the circuit reports it.
 */
export function switchKind(spec: SwitchSpec): Kind {
  const controls = (part: Part): readonly Control[] => {
    const drawn = drawnControls(part);
    return drawn.length > 0 ? drawn : (spec.usualControls?.(part) ?? []);
  };
  return {
    name: spec.name,
    title: spec.title,
    words: spec.words,
    letter: "S",
    role: "control",
    settings: [...(spec.settings ?? []), CONTACT_OHMS],
    terminals(part) {
      const named = terminalsIn(controls(part));
      return named.length > 0 ? named : ["1", "2"];
    },
    controls,
    model: (view) => contactModel(view, view.number("contactOhms")),
    start: "",
    closed: (view, _state, around) => closedContacts(view, around),
    next: (_view, state) => state,
    doing: doesNothing,
    faults: switchFaults,
    symbol: (view, pose) => switchSymbol(view, pose, spec.operator),
    testPoints: loadTestPoints,
  };
}

const CONTACT_FORMS = ["normally open", "normally closed", "change-over"] as const;

/** The setting that says which way the contact of a two-position switch goes. */
export function contactForm(usual: (typeof CONTACT_FORMS)[number], source: string): SettingSpec {
  return choice("contact", "contact", usual, CONTACT_FORMS, source);
}

/**
 * The one control of a two-position switch: at rest in the first position, its contact as the setting `contact` says.
 * A change-over has its common at 1, break at 2, make at 4 (numbers of EN 50013, from memory).
 */
export function twoPositions(
  part: Part,
  usual: (typeof CONTACT_FORMS)[number],
  names: readonly [string, string],
  springsBack = false,
): readonly Control[] {
  const form = part.settings?.contact ?? usual;
  const [first = "1", second = "2", third = "4"] = part.terminals ?? [];
  const isBreak = form === "normally closed";
  const make: readonly (readonly [string, string])[] =
    form === "change-over" ? [[first, third]] : isBreak ? [] : [[first, second]];
  const rest: readonly (readonly [string, string])[] = form === "normally open" ? [] : [[first, second]];
  const thrown = { name: names[1], joins: make };
  return [
    {
      name: "",
      positions: [{ name: names[0], joins: rest }, springsBack ? { ...thrown, springsBackTo: names[0] } : thrown],
    },
  ];
}
