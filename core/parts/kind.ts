import type { PartId } from "../base/ids.ts";
import type { Amps, Celsius, Share, Volts, Watts } from "../base/units.ts";
import type { Mark, Spot } from "../drawing/mark.ts";
import type { Law } from "../solve/element.ts";

// ---------------------------------------------------------------- what a circuit says of a part

/** The value of one setting. */
export type Setting = number | string | boolean;
/** Settings of a part by name. */
export type Settings = Readonly<Record<string, Setting>>;

/** One position of a control: the pairs of terminals joined while it stands there. */
export interface Position {
  readonly name: string;
  readonly joins: readonly (readonly [string, string])[];
  /** Name of the position it returns to when let go; absent where it latches. */
  readonly springsBackTo?: string;
}

/** A handle a person can move. A part with one control needs no name for it; a panel with several names each. */
export interface Control {
  readonly name: string;
  readonly label?: string;
  readonly positions: readonly Position[];
}

/** One line of a module's when-then table: while every `when` holds, the pairs in `joins` are closed inside. */
export interface WhenThen {
  /** Pin name to the level it must see: "high" is above 60 % of nominal volts, "low" below 20 %. */
  readonly when: Readonly<Record<string, "high" | "low">>;
  readonly joins: readonly (readonly [string, string])[];
}

/** What a module's pin is: an input, an output that drives, or not known. */
export type PinRole = "supply" | "ground" | "input" | "drives-high" | "drives-low" | "unknown";

/** The spot of a printed page from which something was redrawn, in pixels of its picture. */
export interface Printed {
  /** Id of the printed page. */
  readonly underlay: string;
  readonly x: number;
  readonly y: number;
}

/** A part as the circuit file writes it. Only what differs from the kind's defaults need be in `settings`. */
export interface Part {
  readonly id: PartId;
  readonly kind: string;
  readonly label?: string;
  readonly settings?: Settings;
  /** Terminal names in order; where absent, the kind's own names for these settings. */
  readonly terminals?: readonly string[];
  /** Switches: the positions of its one control; the first is rest. */
  readonly positions?: readonly Position[];
  /** Panels: several controls in one body, each with positions. */
  readonly controls?: readonly Control[];
  /** Modules: what each pin is, and the table that closes its inner contacts. */
  readonly pins?: Readonly<Record<string, PinRole>>;
  readonly table?: readonly WhenThen[];
  readonly printed?: Printed;
}

// ---------------------------------------------------------------- electrical model

/** An end inside a part's model: a terminal `6`, a hidden node `~mid`, or a shared node `=body:chassis`, `=link:K15`. */
export type End = string;

/**
 * What an element lets pass, for wire states: a conductor or closed contact is firm both ways, a diode firm forward,
 * a load never firm, a source ends every path, a pin is a module's own resistance (never firm).
 */
export type Passing = "conductor" | "contact" | "diode" | "load" | "source" | "pin";

/** One two-ended element of a part's model. `key` is unique in the part and names it in faults: `coil`, `6-4`. */
export interface ModelElement {
  readonly key: string;
  readonly a: End;
  readonly b: End;
  readonly law: Law;
  readonly passes: Passing;
  /** Copper or tungsten follows the ambient on its own where true (coils, windings); the network scales its ohms. */
  readonly copper?: boolean;
}

/** What stands around a part when its contacts are looked up. */
export interface Around {
  /** Position name of each control of this part, by control name ("" for the only one). */
  readonly positions: Readonly<Record<string, string>>;
  /** Outputs driven by hand: pin to "on" or "off". */
  readonly drive: Readonly<Record<string, "on" | "off">>;
  readonly engineRunning: boolean;
  readonly ambientC: Celsius;
  readonly nominalVolts: Volts;
}

/** What a part sees of itself in the solved circuit. */
export interface Sees {
  /** Volts from a to b across the element of this key; 0 where it floats. */
  volts(key: string): Volts;
  /** Amps from a to b through it. */
  amps(key: string): Amps;
  /** Volts of a terminal to battery negative; null where floating. */
  terminalVolts(terminal: string): Volts | null;
}

/** What a load is doing: a word for people, and how much of its work it does (0 to 1 and beyond). */
export interface Doing {
  readonly doing:
    | "off"
    | "on"
    | "forward"
    | "reverse"
    | "stalled"
    | "pulled-in"
    | "released"
    | "supplying"
    | "charging"
    | "melted"
    | "tripped"
    | "flashing"
    | "dim";
  readonly amps: Amps;
  readonly watts: Watts;
  /** How much work it does, in a measure of its own kind (speed, light, watts, volts). `level` is this over the healthy circuit's. */
  readonly work: number;
}

/** What a kind does that never does anything. */
export const doesNothing = (): null => null;

// ---------------------------------------------------------------- faults

/** What a fault does to the model. */
export type FaultEffect =
  | { readonly does: "open"; readonly element: string }
  | { readonly does: "add-ohms"; readonly element: string; readonly ohms: number }
  | { readonly does: "set-ohms"; readonly element: string; readonly ohms: number }
  /** A contact that no longer obeys. */
  | { readonly does: "stick"; readonly element: string; readonly closed: boolean }
  /** The part's state never leaves this one: a welded relay, a breaker that stays out. */
  | { readonly does: "hold"; readonly state: string }
  /** A control that does not stand where it is thought to. */
  | { readonly does: "stand"; readonly control: string; readonly position: string }
  /** A path that should not be there, from an end to another end or to `=return` or `=feed`. */
  | { readonly does: "bridge"; readonly from: End; readonly to: End; readonly ohms: number }
  | { readonly does: "set"; readonly setting: string; readonly value: Setting };

/** One way a part can fail. Its id in a circuit is `TARGET:mode` or `TARGET:mode=value`. */
export interface FaultMode {
  /** `open`, `ohms`, `short-to-ground`, `stuck-closed-6-4`, `seized`: lower case, hyphens. */
  readonly mode: string;
  /** In words, after the part's name: "contact 6-4 burnt open". */
  readonly title: string;
  /** Present where the mode takes a number. */
  readonly value?: {
    readonly unit: string;
    readonly usual: readonly number[];
    readonly min: number;
    readonly max: number;
  };
  /** Starting weight, relative; a stated guess from `core/parts/weights.ts`. */
  readonly weight: number;
  /** Faults of one target with the same repair are one group: "replace", "clean", "free the mechanism". */
  readonly repair: string;
  /** Terminals of which one must end on nothing in the drawing for this to be possible; absent where it always is. */
  readonly unless?: readonly string[];
  effects(value: number): readonly FaultEffect[];
}

// ---------------------------------------------------------------- symbol

/** The two sets of symbols: IEC 60617 and North American. */
export type Look = "iec" | "na";
/** How a part stands right now: which contacts are closed, which were at rest, and a word such as "pulled in". */
export interface Pose {
  readonly closed: ReadonlySet<string>;
  readonly rest: ReadonlySet<string>;
  readonly state: string;
}
/** Where a wire leaves a terminal. */
export type Side = "left" | "right" | "up" | "down";

/** A symbol before it is turned and placed: origin at its top left, grid units; terminals lie on whole grid points. */
export interface SymbolShape {
  readonly width: number;
  readonly height: number;
  readonly terminals: Readonly<Record<string, Spot & { readonly side: Side }>>;
  readonly marks: readonly Mark[];
  /** A long line of the symbol, level or upright, that wires of other parts may cross between its terminals as they cross a wire. */
  readonly bar?: readonly [Spot, Spot];
  /** Where designator and label stand, and how they are anchored, so that they keep clear of wires. */
  readonly nameAt: Spot & { readonly anchor: "start" | "middle" | "end" };
}

// ---------------------------------------------------------------- settings and the kind itself

/** A setting that a kind of part has: its unit, default, limits, and where the default comes from. */
export interface SettingSpec {
  readonly name: string;
  readonly label: string;
  /** `V`, `A`, `ohm`, `W`, `%`, `degC`, or "" for a bare choice. */
  readonly unit: string;
  readonly value:
    | {
        readonly type: "number";
        readonly usual: (nominalVolts: Volts) => number;
        readonly min: number;
        readonly max: number;
      }
    | { readonly type: "choice"; readonly usual: string; readonly choices: readonly string[] }
    | { readonly type: "yes-no"; readonly usual: boolean }
    /** A free word, such as the name of a page link. */
    | { readonly type: "word"; readonly usual: string };
  /** Where the default comes from: a published document, "common practice, no source", or "from memory". */
  readonly source: string;
}

/** A terminal that a probe can touch. */
export interface TestPointSpec {
  readonly terminal: string;
  /** What the probe touches: "terminal", "blade", "stud", "post". */
  readonly touches: string;
}

/** A part with every setting filled in: what a kind's functions are given. */
export interface PartView {
  readonly part: Part;
  readonly terminals: readonly string[];
  /** Controls with their names ("" for the only one); empty for parts without. */
  readonly controls: readonly Control[];
  number(setting: string): number;
  word(setting: string): string;
  yes(setting: string): boolean;
  readonly nominalVolts: Volts;
}

/** A kind of part: the one file that knows all about it. */
export interface Kind {
  /** The word in the file: `relay`. */
  readonly name: string;
  /** The trade's word on screen: "Relay". */
  readonly title: string;
  /** Other words a person may search by. */
  readonly words: readonly string[];
  /** Letter for new designators: K. */
  readonly letter: string;
  readonly role: "source" | "protection" | "control" | "load" | "join" | "electronics";
  readonly settings: readonly SettingSpec[];
  /** Pairs of settings of which the first must be the smaller: a relay drops out below where it pulls in. */
  readonly rising?: readonly (readonly [string, string])[];
  /** Gives light: a symbol with rays while it does. */
  readonly shines?: boolean;
  /** Terminal names where the part gives none. */
  terminals(part: Part, settings: Settings): readonly string[];
  /** Its controls for a condition to set; parts with drawn positions return those. */
  controls(part: Part): readonly Control[];
  model(view: PartView): readonly ModelElement[];
  /** State it starts from at rest; "" for parts that have none. */
  readonly start: string;
  /** Keys of the contacts closed in this state and these positions. */
  closed(view: PartView, state: string, around: Around): readonly string[];
  /** The state it goes to, given what it sees; the same state when it is still. */
  next(view: PartView, state: string, sees: Sees, around: Around): string;
  /** Outputs whose state nothing decides: their pins. The live room then solves every combination of them. */
  unset?(view: PartView, state: string, sees: Sees, around: Around): readonly string[];
  /** What it is doing, or null for parts that do no work. */
  doing(view: PartView, state: string, sees: Sees, around: Around): Doing | null;
  faults(view: PartView): readonly FaultMode[];
  symbol(view: PartView, pose: Pose, look: Look): SymbolShape;
  testPoints(view: PartView): readonly TestPointSpec[];
}

/** Share of nominal volts that counts as a high input, and as a low one (common practice, no source). */
export const HIGH_INPUT: Share = 0.6;
export const LOW_INPUT: Share = 0.2;
