import { remember } from "../base/memo.ts";
import type { Ohms, Volts } from "../base/units.ts";
import {
  type Around,
  doesNothing,
  type FaultMode,
  HIGH_INPUT,
  type Kind,
  LOW_INPUT,
  type ModelElement,
  type Part,
  type PartView,
  type PinRole,
  type Sees,
  type WhenThen,
} from "./kind.ts";
import { opens, sticks } from "./loadFaults.ts";
import { moduleSymbol } from "./moduleSymbol.ts";
import { loadTestPoints } from "./outline.ts";
import { amount, choice } from "./settings.ts";
import { WEIGHTS } from "./weights.ts";

const CONTACT_OHMS: Ohms = 0.02;
/** Share of nominal volts between supply and ground below which a module sleeps (a guess). */
const AWAKE_SHARE = 0.5;
/** What a module is until its pins are named. */
const USUAL_PINS: Readonly<Record<string, PinRole>> = {
  "30": "supply",
  "31": "ground",
  "1": "input",
  "2": "drives-high",
};

/** What each pin of a module is, in the order of its terminals; a pin nobody described is unknown. */
export const pinRoles = remember((view: Pick<PartView, "part" | "terminals">): ReadonlyMap<string, PinRole> => {
  const told = pinsOf(view.part);
  return new Map(view.terminals.map((pin) => [pin, told[pin] ?? "unknown"]));
});

function pinsOf(part: Part): Readonly<Record<string, PinRole>> {
  return part.pins ?? USUAL_PINS;
}

/** Pins of one role or of several, in order. */
function pinsThat(view: PartView, ...wanted: readonly PinRole[]): readonly string[] {
  return [...pinRoles(view)].flatMap(([pin, role]) => (wanted.includes(role) ? [pin] : []));
}

/** The pins that every pass of a settling circuit asks for. */
const supplyPins = remember((view: PartView) => view.terminals.filter((pin) => pinRoles(view).get(pin) === "supply"));
const groundPins = remember((view: PartView) => view.terminals.filter((pin) => pinRoles(view).get(pin) === "ground"));

function rowsOf(view: PartView): readonly WhenThen[] {
  return view.part.table ?? [];
}

// ---------------------------------------------------------------- inner contacts

interface Inner {
  readonly key: string;
  readonly a: string;
  readonly b: string;
}

/** The rail that an output switches: its supply or its ground; undefined where the module has none. */
function railOf(view: PartView, pin: string): string | undefined {
  return pinsThat(view, pinRoles(view).get(pin) === "drives-low" ? "ground" : "supply")[0];
}

/** Every pair of pins that the table or a hand can join, each once; the key is the pair as it was first written. */
function innerContacts(view: PartView): readonly Inner[] {
  const found: Inner[] = [];
  const add = (a: string, b: string): void => {
    const known = view.terminals.includes(a) && view.terminals.includes(b) && a !== b;
    if (known && !keyOf(found, a, b)) found.push({ key: `${a}-${b}`, a, b });
  };
  for (const { joins } of rowsOf(view)) for (const [a, b] of joins) add(a, b);
  for (const pin of pinsThat(view, "drives-high", "drives-low")) {
    const rail = railOf(view, pin);
    if (rail !== undefined && !found.some(({ a, b }) => a === pin || b === pin)) add(rail, pin);
  }
  return found;
}

function keyOf(contacts: readonly Inner[], a: string, b: string): string | undefined {
  return contacts.find((inner) => (inner.a === a && inner.b === b) || (inner.a === b && inner.b === a))?.key;
}

/** The contact that drives an output: to its rail where the table joins it there, else the first that touches it. */
function driverOf(view: PartView, contacts: readonly Inner[], pin: string): string | undefined {
  const rail = railOf(view, pin);
  const toRail = rail === undefined ? undefined : keyOf(contacts, rail, pin);
  return toRail ?? contacts.find(({ a, b }) => a === pin || b === pin)?.key;
}

// ---------------------------------------------------------------- the table

/** A module's state in words: `asleep`, `idle`, or `rows 1 3 ?2`, counted from 1, with ? before a row not decided. */
function spell(closed: readonly number[], undecided: readonly number[]): string {
  if (closed.length + undecided.length === 0) return "idle";
  return ["rows", ...closed.map((row) => `${row + 1}`), ...undecided.map((row) => `?${row + 1}`)].join(" ");
}

/** Rows of the table that a state closes, and those it cannot decide, counted from 0. */
function rowsIn(state: string): { readonly closed: readonly number[]; readonly undecided: readonly number[] } {
  if (!state.startsWith("rows ")) return { closed: [], undecided: [] };
  const words = state.split(" ").slice(1);
  return {
    closed: words.filter((word) => !word.startsWith("?")).map((word) => Number(word) - 1),
    undecided: words.filter((word) => word.startsWith("?")).map((word) => Number(word.slice(1)) - 1),
  };
}

/** Volts between the first supply pin that has any and the first ground pin; null where the module names neither. */
function supplyVolts(view: PartView, sees: Sees): Volts | null {
  const [supplies, grounds] = [supplyPins(view), groundPins(view)];
  if (supplies.length === 0) return null;
  const most = Math.max(...supplies.map((pin) => sees.terminalVolts(pin) ?? 0));
  return most - (grounds.length === 0 ? 0 : groundVolts(view, sees, most));
}

/** Volts of its ground; a ground that hangs free rises to the supply, and the module sleeps. */
function groundVolts(view: PartView, sees: Sees, whenFree: Volts): Volts {
  const [ground] = groundPins(view);
  return ground === undefined ? 0 : (sees.terminalVolts(ground) ?? whenFree);
}

/** What a pin sees: high, low, or null where it floats or lies between the two. */
export function inputLevel(view: PartView, sees: Sees, pin: string): "high" | "low" | null {
  const volts = view.terminals.includes(pin) ? sees.terminalVolts(pin) : null;
  if (volts === null) return null;
  const share = (volts - groundVolts(view, sees, 0)) / view.nominalVolts;
  return share > HIGH_INPUT ? "high" : share < LOW_INPUT ? "low" : null;
}

/** Whether a row holds: false as soon as one input says no, null where one says neither. */
function holds(view: PartView, sees: Sees, row: WhenThen): boolean | null {
  const answers = Object.entries(row.when).map(([pin, wanted]) => {
    const level = inputLevel(view, sees, pin);
    return level === null ? null : level === wanted;
  });
  if (answers.includes(false)) return false;
  return answers.includes(null) ? null : true;
}

/** Outputs whose level nothing decides: no row drives them, or only rows whose inputs float, and no hand has set them. */
export function unsetOutputs(view: PartView, state: string, around: Around): readonly string[] {
  if (state === "asleep") return [];
  const { closed, undecided } = rowsIn(state);
  const touches = (row: WhenThen | undefined, pin: string) => row?.joins.some((pair) => pair.includes(pin)) ?? false;
  const rows = rowsOf(view);
  return pinsThat(view, "drives-high", "drives-low").filter((pin) => {
    if (around.drive[pin] !== undefined || closed.some((row) => touches(rows[row], pin))) return false;
    return !rows.some((row) => touches(row, pin)) || undecided.some((row) => touches(rows[row], pin));
  });
}

// ---------------------------------------------------------------- the kind

/** An input is pulled up where the table waits for it to go low, else down: so a switch to ground or to feed is seen. */
function isPulledUp(view: PartView, pin: string): boolean {
  if (view.word("pull") !== "by table") return view.word("pull") === "up";
  const wanted = rowsOf(view).flatMap(({ when }) => (when[pin] === undefined ? [] : [when[pin]]));
  return wanted.length > 0 && wanted.every((level) => level === "low");
}

function inputLoad(view: PartView, pin: string): readonly ModelElement[] {
  const [rail] = pinsThat(view, isPulledUp(view, pin) ? "supply" : "ground");
  if (rail === undefined) return [];
  const ohms = view.number("inputOhms");
  return [{ key: `input-${pin}`, a: `~${pin}`, b: `~${rail}`, law: { law: "resistor", ohms }, passes: "load" }];
}

/** Amps that a module takes which does not go to sleep (guesses). */
const AWAKE_AMPS = [0.3, 1] as const;

/** Draws from its supply as if it were at work; only where it names a supply and a ground. */
function staysAwake(view: PartView): readonly FaultMode[] {
  const [[supply], [ground]] = [supplyPins(view), groundPins(view)];
  if (supply === undefined || ground === undefined) return [];
  return [
    {
      mode: "stays-awake",
      title: "does not go to sleep",
      value: { unit: "A", usual: AWAKE_AMPS, min: 0.01, max: 10 },
      weight: WEIGHTS.moduleAwake,
      repair: "find what wakes it",
      effects: (amps) => [{ does: "bridge", from: supply, to: ground, ohms: view.nominalVolts / amps }],
    },
  ];
}

/**
 * An output that it does not ask for, since something is missing which the drawing does not show: where no row of the table
 * drives it, a pin is unknown, or an input that the table waits for ends on nothing.
 */
function notAsked(view: PartView): readonly FaultMode[] {
  const isUnknown = pinsThat(view, "unknown").length > 0;
  return pinsThat(view, "drives-high", "drives-low").map((pin): FaultMode => {
    const rows = rowsOf(view).filter(({ joins }) => joins.some((pair) => pair.includes(pin)));
    const waitsFor = [...new Set(rows.flatMap(({ when }) => Object.keys(when)))];
    return {
      ...opens(
        `pin-${pin}`,
        `output ${pin} not asked for`,
        WEIGHTS.moduleNotAsked,
        `not-asked-${pin}`,
        "find what it waits for",
      ),
      ...(!isUnknown && rows.length > 0 && { unless: waitsFor }),
    };
  });
}

/**
 * A control module: named pins, and a when-then table that closes contacts inside. It sleeps without supply or ground.
 * A row whose inputs float or lie between low and high is not decided; `unsetOutputs` names the outputs that hang on it.
 */
export const controlModule: Kind = {
  name: "module",
  title: "Control module",
  words: ["control unit", "ECU", "body computer", "electronics", "box"],
  letter: "U",
  role: "electronics",
  settings: [
    choice("pull", "inputs are pulled", "by table", ["by table", "up", "down"], "common practice, no source"),
    amount("inputOhms", "ohms of an input", "ohm", 10000, [100, 1e6], "common practice, no source"),
    amount("pinOhms", "ohms of a driver", "ohm", 0.05, [0.001, 100], "a guess"),
  ],
  terminals: (part) => Object.keys(pinsOf(part)),
  controls: () => [],
  model(view) {
    const pinOhms = view.number("pinOhms");
    return [
      ...view.terminals.map((pin): ModelElement => {
        return { key: `pin-${pin}`, a: pin, b: `~${pin}`, law: { law: "resistor", ohms: pinOhms }, passes: "pin" };
      }),
      ...pinsThat(view, "input").flatMap((pin) => inputLoad(view, pin)),
      ...innerContacts(view).map(({ key, a, b }): ModelElement => {
        return { key, a: `~${a}`, b: `~${b}`, law: { law: "resistor", ohms: CONTACT_OHMS }, passes: "contact" };
      }),
    ];
  },
  start: "asleep",
  closed(view, state, around) {
    const contacts = innerContacts(view);
    const keys = new Set<string>();
    for (const row of rowsIn(state).closed) {
      for (const [a, b] of rowsOf(view)[row]?.joins ?? []) {
        const key = keyOf(contacts, a, b);
        if (key) keys.add(key);
      }
    }
    // Without feed or ground nothing inside drives, whatever it is asked for.
    if (state === "asleep") return [...keys];
    for (const [pin, level] of Object.entries(around.drive)) {
      for (const { key, a, b } of contacts) if (a === pin || b === pin) keys.delete(key);
      const driver = level === "on" ? driverOf(view, contacts, pin) : undefined;
      if (driver) keys.add(driver);
    }
    return [...keys];
  },
  next(view, _state, sees) {
    const supply = supplyVolts(view, sees);
    if (supply !== null && supply < AWAKE_SHARE * view.nominalVolts) return "asleep";
    const answers = rowsOf(view).map((row) => holds(view, sees, row));
    const rows = [...answers.keys()];
    return spell(
      rows.filter((row) => answers[row] === true),
      rows.filter((row) => answers[row] === null),
    );
  },
  unset: (view, state, _sees, around) => unsetOutputs(view, state, around),
  doing: doesNothing,
  faults(view) {
    const contacts = innerContacts(view);
    return [
      ...pinsThat(view, "drives-high", "drives-low").flatMap((pin): readonly FaultMode[] => {
        const driver = driverOf(view, contacts, pin);
        return [
          opens(`pin-${pin}`, `output ${pin} dead`, WEIGHTS.moduleOutput, `output-dead-${pin}`),
          ...(driver
            ? [sticks(driver, true, `output ${pin} stuck on`, WEIGHTS.moduleOutput / 2, `output-stuck-on-${pin}`)]
            : []),
        ];
      }),
      {
        mode: "dead",
        title: "module dead",
        weight: WEIGHTS.moduleOutput / 2,
        repair: "replace",
        effects: () => [{ does: "hold", state: "asleep" }],
      },
      ...staysAwake(view),
      ...notAsked(view),
    ];
  },
  symbol: (view, pose) => moduleSymbol(view, pinRoles(view), pose),
  testPoints: loadTestPoints,
};
