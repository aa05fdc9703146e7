import { remember } from "../base/memo.ts";
import type { Ohms } from "../base/units.ts";
import type { Around, Control, FaultMode, ModelElement, Part, PartView, Position } from "./kind.ts";
import { addsOhms, sticks } from "./loadFaults.ts";
import { WEIGHTS } from "./weights.ts";

/** Two terminals that some position of a control joins. The key is the pair as it was first written: `4-6`. */
export interface Contact {
  readonly key: string;
  readonly a: string;
  readonly b: string;
}

/** The contacts of one control, and which of them are closed in each of its positions; the first position is rest. */
export interface ContactGroup {
  readonly control: string;
  readonly label: string;
  readonly contacts: readonly Contact[];
  readonly positions: readonly { readonly name: string; readonly keys: readonly string[] }[];
}

/** The controls as the part writes them: several with names, or one without. Empty where it writes no positions. */
export function drawnControls(part: Part): readonly Control[] {
  if (part.controls) return part.controls;
  return part.positions && part.positions.length > 0 ? [{ name: "", positions: part.positions }] : [];
}

/** Terminal names in the order in which the positions first mention them. */
export function terminalsIn(controls: readonly Control[]): readonly string[] {
  return [...new Set(controls.flatMap(({ positions }) => positions.flatMap(({ joins }) => joins.flat())))];
}

/**
 * The continuity table of a part, control by control. Joins that name a terminal the part does not have, or one terminal
 * twice, are left out: the check of the circuit reports them. A pair that a second control joins too is a contact of its
 * own, `4-6-in-rear`.
 */
export const contactGroups = remember((view: PartView): readonly ContactGroup[] => {
  const taken = new Set<string>();
  return view.controls.map((control) => groupOf(control, view.terminals, taken));
});

function groupOf(control: Control, terminals: readonly string[], taken: Set<string>): ContactGroup {
  const contacts: Contact[] = [];
  const keyOf = (a: string, b: string): readonly string[] => {
    if (a === b || !terminals.includes(a) || !terminals.includes(b)) return [];
    const known = contacts.find((contact) => isBetween(contact, a, b));
    if (known) return [known.key];
    const isTaken = taken.has(`${a}-${b}`) || taken.has(`${b}-${a}`);
    const key = isTaken ? `${a}-${b}-in-${slug(control.name)}` : `${a}-${b}`;
    taken.add(key);
    contacts.push({ key, a, b });
    return [key];
  };
  const positions = control.positions.map(({ name, joins }) => ({
    name,
    keys: [...new Set(joins.flatMap(([a, b]) => keyOf(a, b)))],
  }));
  return { control: control.name, label: control.label ?? control.name, contacts, positions };
}

function isBetween(contact: Contact, a: string, b: string): boolean {
  return (contact.a === a && contact.b === b) || (contact.a === b && contact.b === a);
}

/** Keys of the contacts closed while every control stands where it does. An unknown position counts as rest. */
export function closedContacts(view: PartView, around: Around): readonly string[] {
  return contactGroups(view).flatMap(({ control, positions }) => {
    const standing = positions.find(({ name }) => name === around.positions[control]) ?? positions[0];
    return standing?.keys ?? [];
  });
}

/** One element for each contact, all with the same ohms when closed. */
export function contactModel(view: PartView, ohms: Ohms): readonly ModelElement[] {
  return contactGroups(view)
    .flatMap(({ contacts }) => contacts)
    .map(({ key, a, b }) => ({ key, a, b, law: { law: "resistor", ohms }, passes: "contact" }));
}

/** How one contact fails by itself: it does not close, it adds ohms, and where it may open, it does not open. */
export function contactFaults(key: string, mayOpen: boolean): readonly FaultMode[] {
  const faults = [
    sticks(key, false, `contact ${key} does not close`, WEIGHTS.contactBurnt, `stuck-open-${key}`),
    addsOhms(key, `contact ${key} burnt, ohms added`, WEIGHTS.contactPoor, [2, 20, 0.3], `ohms-${key}`),
  ];
  const welded = sticks(key, true, `contact ${key} does not open`, WEIGHTS.contactStuck, `stuck-closed-${key}`);
  return mayOpen ? [...faults, welded] : faults;
}

/** Every fault of a switch: each control left where it should not be (a look clears it), then each contact by itself. */
export function switchFaults(view: PartView): readonly FaultMode[] {
  const contacts = contactGroups(view).flatMap(({ contacts, positions }) =>
    contacts.flatMap(({ key }) => contactFaults(key, !positions.every(({ keys }) => keys.includes(key)))),
  );
  return [...view.controls.flatMap((control) => leftIn(control, view.controls.length === 1)), ...contacts];
}

/** A position that springs back cannot be left. */
function leftIn(control: Control, isOnly: boolean): readonly FaultMode[] {
  return control.positions.filter(canBeLeft).map(({ name }) => ({
    mode: isOnly ? `left-in-${slug(name)}` : `left-in-${slug(control.name)}-${slug(name)}`,
    title: isOnly
      ? `stands at ${name}, not where it should`
      : `${control.label ?? control.name} stands at ${name}, not where it should`,
    weight: WEIGHTS.wrongPosition,
    repair: "set the control",
    effects: () => [{ does: "stand", control: control.name, position: name }],
  }));
}

function canBeLeft(position: Position): boolean {
  return position.springsBackTo === undefined;
}

function slug(name: string): string {
  return name.trim().toLowerCase().replace(/\s+/g, "-");
}
