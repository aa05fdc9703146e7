import type { ConnectorId, ControlKey, PartId, PointId, WireId } from "../base/ids.ts";
import type {
  Celsius,
  GridUnits,
  Metres,
  Millimetres,
  Minutes,
  Ohms,
  Seconds,
  Share,
  SquareMillimetres,
  Volts,
} from "../base/units.ts";
import type { Quad } from "../drawing/projection.ts";
import type { Part, Printed } from "../parts/kind.ts";

/** Formats in which pictures are kept. */
export const PICTURE_TYPES = ["image/png", "image/jpeg", "image/webp"] as const;

/** A picture, which is kept apart from the circuit and named by its content. */
export interface Picture {
  /** SHA-256 of its bytes, 64 signs in lower case. */
  readonly sha256: string;
  readonly mime: (typeof PICTURE_TYPES)[number];
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A page of the printed schematic that lies under the drawing of a page. */
export interface Underlay {
  readonly id: string;
  /** Where it comes from: the file's name and the page in it. */
  readonly title: string;
  readonly image: Picture;
  /** What of the picture is shown, in its pixels: the paper's corners in a photograph. Absent: all of it. */
  readonly cut?: Quad;
  /** Where the four corners of that lie on the page, in millimetres. */
  readonly corners: Quad;
  /** 1 covers what is below, 0 cannot be seen; `FIRST_LOOK` where absent. */
  readonly opacity?: Share;
  /** 1 as it is, 2 twice as far from middle grey. */
  readonly contrast?: number;
  /** Whether paper and shadows on it are made white, so that only what is printed is left. */
  readonly whiteOut?: boolean;
  /** Locked, it cannot be moved by mistake. */
  readonly isLocked?: boolean;
  readonly isHidden?: boolean;
}

/** A page of the circuit. */
export interface Page {
  readonly id: string;
  readonly title: string;
  readonly widthMm: Millimetres;
  readonly heightMm: Millimetres;
  /** Printed pages under its drawing, the lowest first. */
  readonly underlays?: readonly Underlay[];
}

/**
 * What was seen of a wire on the vehicle, where it is not as printed: its colour, or the place of an end on the connector
 * or part where it is printed. Without any of them it was seen to be as printed.
 */
export interface Seen {
  readonly colour?: string;
  readonly from?: string;
  readonly to?: string;
}

/** A conductor between two points, as it is printed. `ohms` measured or given outright beats size and length. */
export interface Wire {
  readonly id: WireId;
  readonly from: PointId;
  readonly to: PointId;
  /** Insulation colour, main / stripe, in the circuit's colour code set. */
  readonly colour?: string;
  readonly mm2?: SquareMillimetres;
  readonly metres?: Metres;
  readonly ohms?: Ohms | null;
  readonly printed?: Printed;
  /** Absent where nobody has looked at it on the vehicle. */
  readonly seen?: Seen;
}

/** A housing: rows of numbered places seen from the wire side, and the part terminal each place carries. */
export interface Connector {
  readonly id: ConnectorId;
  readonly label?: string;
  /** Cavity numbers as the face shows them from the wire side, row by row; "" is a gap. */
  readonly rows: readonly (readonly string[])[];
  /** Cavity to part terminal. Absent for an in-line joint: the part of the same id. */
  readonly cavities?: Readonly<Record<string, PointId>>;
}

/** Trim that must come off first; opened once, then everything behind it is cheap. */
export interface AccessGroup {
  readonly id: string;
  readonly label: string;
  readonly minutes: Minutes;
  readonly hands?: 1 | 2;
  readonly after?: readonly string[];
  readonly cautions?: readonly string[];
  /** What it looks like on the vehicle. */
  readonly photo?: Picture;
}

/** How a part, splice, ground, cavity or connector is reached. */
export interface Reach {
  /** Where it is, in words: "behind the left kick panel". */
  readonly where?: string;
  readonly access?: string;
  readonly minutes?: Minutes;
  readonly hands?: 1 | 2;
  readonly doNotProbe?: string;
  readonly cautions?: readonly string[];
}

/** What differs from rest. Controls are thrown in the order written. */
export interface Condition {
  readonly set?: Readonly<Record<ControlKey, string>>;
  readonly apart?: readonly ConnectorId[];
  readonly out?: readonly PartId[];
  readonly batteryOff?: boolean;
  readonly drive?: Readonly<Record<PointId, "on" | "off">>;
  readonly running?: boolean;
  readonly ambientC?: Celsius;
}

/** What a load can be expected to do in a function check. */
export const EXPECTATIONS = ["forward", "reverse", "on", "off", "low", "high", "flashes"] as const;
/** One of the expectations: forward is terminal 1 positive. */
export type Expectation = (typeof EXPECTATIONS)[number];

/** "In this condition the load should do that." One check per direction; a complaint is a check that fails. */
export interface FunctionCheck {
  readonly id: string;
  readonly label: string;
  readonly condition: Condition;
  readonly load: PartId;
  readonly expect: Expectation;
}

/**
 * What a question asks for: the state of a point, volts between two places, or how a lamp burns. The answer is never written:
 * whoever asks has the circuit solved.
 */
export type Asked =
  | { readonly asks: "state"; readonly point: PointId }
  | { readonly asks: "volts"; readonly point: PointId; readonly black: PointId | "battery +" | "battery -" }
  | {
      readonly asks: "lamp";
      readonly point: PointId;
      readonly lampTo: "battery +" | "battery -";
      readonly lamp: "4 A lamp" | "0.25 A lamp";
    };

/** A condition with a caption, for class. */
export interface Scene {
  readonly label: string;
  readonly condition: Condition;
  readonly caption?: string;
  /** What the instructor keeps in mind to say; no class and no learner is shown it. */
  readonly notes?: string;
  /** Parts to look at; all where absent. */
  readonly focus?: readonly PartId[];
  /** How long it stands when the scenes are played; `SCENE_SECONDS` of the lesson room where absent. */
  readonly seconds?: Seconds;
  /** What the class is asked before the scene shows it; nothing where absent. */
  readonly questions?: readonly Asked[];
}

/** Shortest and longest that a scene may stand. */
export const SCENE_LIMITS = { least: 1, most: 600 } as const satisfies Readonly<Record<string, Seconds>>;

/** Questions that a scene asks at most. */
export const MOST_QUESTIONS = 40;

/** Where a part stands on its page: the top left of its turned outline. */
export interface PartPlace {
  readonly page: string;
  readonly x: GridUnits;
  readonly y: GridUnits;
  /** Quarter turns clockwise. */
  readonly turn?: 0 | 90 | 180 | 270;
  readonly flip?: boolean;
  /** True where arranging the page leaves it as it stands. */
  readonly pinned?: true;
}

/** Where things stand on the pages, apart from what they are. A wire without bends is routed by the program. */
export interface Placement {
  readonly parts: Readonly<Record<PartId, PartPlace>>;
  readonly wires: Readonly<Record<WireId, readonly (readonly [GridUnits, GridUnits])[]>>;
}

/** The document. Plain readonly data; everything else is computed from it. */
export interface Circuit {
  readonly format: "wirefathom/circuit";
  readonly version: 1;
  readonly title: string;
  readonly vehicle?: string;
  readonly revision?: number;
  readonly nominalVolts: Volts;
  readonly colourCodes: "iec60757" | "din72551" | "german" | "japanese" | "north-american" | "free";
  readonly pages: readonly Page[];
  readonly parts: readonly Part[];
  readonly wires: readonly Wire[];
  readonly placement: Placement;
  readonly connectors: readonly Connector[];
  readonly access: readonly AccessGroup[];
  /** Keyed by part, splice, ground, connector, cavity or terminal. */
  readonly reach: Readonly<Record<string, Reach>>;
  readonly checks: readonly FunctionCheck[];
  readonly scenes: readonly Scene[];
  /** Cautions of this vehicle that every sheet repeats. */
  readonly cautions?: readonly string[];
}
