import { remember } from "../base/memo.ts";
import type { Amps, Ohms } from "../base/units.ts";
import { COIL_DEFAULTS, CONTACT_DROPS, coilDefaults, contactOhms, isPulledIn } from "../trade/relays.ts";
import type { Contact, ContactGroup } from "./contacts.ts";
import { contactFaults } from "./contacts.ts";
import { DIODES } from "./diode.ts";
import type { FaultMode, Kind, ModelElement, PartView } from "./kind.ts";
import { innerVolts, opens, shorts } from "./loadFaults.ts";
import { relaySymbol } from "./relaySymbol.ts";
import { amount, choice } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

/** Ohms left in a coil whose turns have burnt together (a guess; real ones vary). */
const BURNT_COIL_OHMS: Ohms = 5;

/** Terminals of DIN 72552 by form: those that part from 30 when the coil pulls in, and those that join it. */
const FORMS: Readonly<Record<string, { readonly breaks: readonly string[]; readonly makes: readonly string[] }>> = {
  make: { breaks: [], makes: ["87"] },
  break: { breaks: ["87a"], makes: [] },
  "change-over": { breaks: ["87a"], makes: ["87"] },
  "twin-make": { breaks: [], makes: ["87", "87b"] },
};

function formOf(word: unknown) {
  return FORMS[String(word)] ?? FORMS.make!;
}

function usualTerminals(form: unknown): readonly string[] {
  const { breaks, makes } = formOf(form);
  return ["86", "85", "30", ...makes.slice(0, 1), ...breaks, ...makes.slice(1)];
}

/** What a DIN terminal is called on this part: the same, or the name in its place where the part numbers its own way. */
function named(view: PartView, din: string): string {
  if (view.terminals.includes(din)) return din;
  return view.terminals[usualTerminals(view.word("form")).indexOf(din)] ?? din;
}

/** The continuity table of a relay's contacts: released, and pulled in. A terminal that the part lacks has no contact. */
const relayContacts = remember((view: PartView): ContactGroup => {
  const { breaks, makes } = formOf(view.word("form"));
  const a = named(view, "30");
  const contactsTo = (terminals: readonly string[]): readonly Contact[] =>
    terminals
      .map((din) => named(view, din))
      .filter((b) => view.terminals.includes(b))
      .map((b) => ({ key: `${a}-${b}`, a, b }));
  const keys = (contacts: readonly Contact[]): readonly string[] => contacts.map(({ key }) => key);
  const [breaking, making] = [contactsTo(breaks), contactsTo(makes)];
  return {
    control: "",
    label: "",
    contacts: [...breaking, ...making],
    positions: [
      { name: "released", keys: keys(breaking) },
      { name: "pulled-in", keys: keys(making) },
    ],
  };
});

function model(view: PartView): readonly ModelElement[] {
  const [a, b] = [named(view, "86"), named(view, "85")];
  const [coilOhms, ohms] = [view.number("coilOhms"), view.number("contactOhms")];
  const coil: ModelElement = {
    key: "coil",
    a,
    b,
    law: { law: "resistor", ohms: coilOhms },
    passes: "load",
    copper: true,
  };
  const contacts = relayContacts(view).contacts.map(
    (contact): ModelElement => ({ ...contact, law: { law: "resistor", ohms }, passes: "contact" }),
  );
  return [coil, ...contacts, ...suppressor(view, a, b)];
}

/** The diode lies with its bar at 86. */
function suppressor(view: PartView, plus: string, minus: string): readonly ModelElement[] {
  const fitted = view.word("suppression");
  if (fitted === "diode") return [{ key: "diode", a: minus, b: plus, law: DIODES.silicon, passes: "diode" }];
  if (fitted !== "resistor") return [];
  const ohms = view.number("suppressorOhms");
  return [{ key: "resistor", a: plus, b: minus, law: { law: "resistor", ohms }, passes: "load" }];
}

function faultsOf(view: PartView): readonly FaultMode[] {
  const { contacts, positions } = relayContacts(view);
  const makes = positions[1]!.keys;
  const welded: FaultMode = {
    mode: "welded",
    title: "welded, stays pulled in",
    weight: WEIGHTS.relayWelded,
    repair: "replace",
    effects: () => [{ does: "hold", state: "pulled-in" }],
  };
  const burnt: FaultMode = {
    mode: "coil-shorted",
    title: "coil burnt to a short",
    weight: WEIGHTS.relayCoil / 4,
    repair: "replace",
    effects: () => [
      { does: "set-ohms", element: "coil", ohms: BURNT_COIL_OHMS },
      { does: "hold", state: "released" },
    ],
  };
  const hasDiode = view.word("suppression") === "diode";
  return [
    opens("coil", "coil open", WEIGHTS.relayCoil, "coil-open"),
    burnt,
    ...(makes.length > 0 ? [welded] : []),
    // A single make contact that does not open is a welded relay: one fault, not two.
    ...contacts.flatMap(({ key }) => contactFaults(key, makes.length !== 1 || key !== makes[0])),
    ...(hasDiode ? [shorts("diode", "diode across the coil shorted", WEIGHTS.diodeShorted, "diode-shorted")] : []),
  ];
}

const COIL_SOURCE = `12 V: ${COIL_DEFAULTS[12].source.document}; 24 V: ${COIL_DEFAULTS[24].source.document}`;

/**
 * A relay: a coil from 86 to 85 and contacts from 30. It pulls in and drops out at two voltages and holds in between; both
 * rise as the copper warms. A diode across the coil blocks while 86 is plus and shorts the coil when fed the other way.
 */
export const relay: Kind = {
  name: "relay",
  title: "Relay",
  words: ["coil", "contactor", "mini relay", "change-over relay"],
  letter: "K",
  role: "control",
  rising: [["dropOutVolts", "pullInVolts"]],
  settings: [
    choice("form", "contacts", "make", Object.keys(FORMS), "DIN 72552 terminals"),
    amount("coilOhms", "coil", "ohm", (volts) => coilDefaults(volts).ohms, [1, 5000], COIL_SOURCE),
    amount("pullInVolts", "pulls in at", "V", (volts) => coilDefaults(volts).pullInVolts, [0.5, 60], COIL_SOURCE),
    amount("dropOutVolts", "drops out at", "V", (volts) => coilDefaults(volts).dropOutVolts, [0.1, 60], COIL_SOURCE),
    choice("suppression", "across the coil", "none", ["none", "diode", "resistor"], "common practice, no source"),
    amount(
      "suppressorOhms",
      "resistor across the coil",
      "ohm",
      (volts) => 6 * coilDefaults(volts).ohms,
      [10, 100_000],
      "from memory",
    ),
    amount(
      "contactOhms",
      "ohms of a closed contact",
      "ohm",
      contactOhms("make"),
      [0.0001, 10],
      CONTACT_DROPS.make.source.document,
    ),
  ],
  terminals: (_part, settings) => usualTerminals(settings.form),
  controls: () => [],
  model,
  start: "released",
  closed: (view, state) => relayContacts(view).positions.find(({ name }) => name === state)?.keys ?? [],
  next(view, state, sees) {
    // What pulls is amps: a warm coil wants more volts, and volts over an open coil pull nothing.
    const volts = innerVolts(view.number("coilOhms"), sees.volts("coil"), sees.amps("coil"));
    const limits = { pullInVolts: view.number("pullInVolts"), dropOutVolts: view.number("dropOutVolts") };
    return isPulledIn(state === "pulled-in", volts, limits) ? "pulled-in" : "released";
  },
  doing(_view, state, sees) {
    const amps: Amps = sees.amps("coil");
    const isIn = state === "pulled-in";
    return { doing: isIn ? "pulled-in" : "released", amps, watts: sees.volts("coil") * amps, work: isIn ? 1 : 0 };
  },
  faults: faultsOf,
  symbol: (view, pose, look) =>
    relaySymbol(view, relayContacts(view), [named(view, "86"), named(view, "85")], pose, look),
  testPoints: (view) => view.terminals.map((terminal) => ({ terminal, touches: "blade" })),
};
