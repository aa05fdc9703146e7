import type { ControlKey, PartId } from "../../core/base/ids.ts";
import { remember } from "../../core/base/memo.ts";
import type { Circuit, Condition } from "../../core/circuit/circuit.ts";
import { placeSymbol } from "../../core/circuit/placeSymbol.ts";
import { controlKey } from "../../core/circuit/points.ts";
import { restPose } from "../../core/circuit/sheetPose.ts";
import type { LineMark, Spot } from "../../core/drawing/mark.ts";
import type { Control, Look } from "../../core/parts/kind.ts";
import { type StandingPart, standingOn } from "./standing.ts";

/** A place where a blade can lie: pressed or clicked, it throws its control to one of the positions it lies there in. */
export interface ThrowPlace {
  readonly part: PartId;
  readonly control: ControlKey;
  readonly foot: Spot;
  readonly tip: Spot;
  /** Positions of the control in which the blade lies here, in their order; rest is the control's first. */
  readonly positions: readonly string[];
}

/** The handle of a control on the page: its positions, which spring back, and its blades in each. */
export interface ThrowControl {
  readonly key: ControlKey;
  readonly part: PartId;
  readonly positions: readonly string[];
  /** Position to the one it returns to when let go. */
  readonly springs: ReadonlyMap<string, string>;
  /** Blades as they lie in each position, pivot first. */
  readonly blades: ReadonlyMap<string, readonly (readonly [Spot, Spot])[]>;
}

/** All that can be thrown on one page. */
export interface Throws {
  readonly places: readonly ThrowPlace[];
  readonly controls: ReadonlyMap<ControlKey, ThrowControl>;
}

const pagesOf = remember((_circuit: Circuit) => new Map<string, Throws>());

/** The places of a page that can be thrown to, remembered for each circuit. Controls without blades have none. */
export function throwsOn(circuit: Circuit, page: string, look: Look): Throws {
  const pages = pagesOf(circuit);
  const known = pages.get(`${look} ${page}`);
  if (known) return known;
  const controls = [...standingOn(circuit, page, look).parts.values()].flatMap((part) =>
    part.view.controls.map((control) => throwControl(circuit, part, control, look)),
  );
  const throws = {
    places: controls.flatMap(placesOf),
    controls: new Map(controls.map((control) => [control.key, control])),
  };
  pages.set(`${look} ${page}`, throws);
  return throws;
}

/** Room temperature, as symbols at rest are drawn. */
const WORKSHOP_CELSIUS = 20;

function throwControl(circuit: Circuit, standing: StandingPart, control: Control, look: Look): ThrowControl {
  const { part, kind, view } = standing;
  const place = circuit.placement.parts[part.id]!;
  const { rest } = restPose(kind, view);
  const bladesIn = (position: string): readonly (readonly [Spot, Spot])[] => {
    const positions = Object.fromEntries(view.controls.map((each) => [each.name, each.positions[0]?.name ?? ""]));
    const around = {
      positions: { ...positions, [control.name]: position },
      drive: {},
      engineRunning: false,
      ambientC: WORKSHOP_CELSIUS,
      nominalVolts: view.nominalVolts,
    };
    const closed = new Set(kind.closed(view, kind.start, around));
    const { marks } = placeSymbol(kind.symbol(view, { closed, rest, state: kind.start }, look), place);
    const lines = marks.filter((mark): mark is LineMark => mark.mark === "line" && mark.role === "contact-now");
    return lines.map(({ spots }) => [spots[0]!, spots.at(-1)!] as const);
  };
  const all = new Map(control.positions.map(({ name }) => [name, bladesIn(name)]));
  const moving = movingFeet([...all.values()]);
  return {
    key: controlKey(part, control),
    part: part.id,
    positions: control.positions.map(({ name }) => name),
    springs: new Map(
      control.positions.flatMap(({ name, springsBackTo }) =>
        springsBackTo === undefined ? [] : [[name, springsBackTo] as const],
      ),
    ),
    blades: new Map(
      [...all].map(([position, blades]) => [position, blades.filter(([foot]) => moving.has(placeKey(foot)))]),
    ),
  };
}

/** Pivots of the blades that lie otherwise in some position than in another: those of this control. */
function movingFeet(all: readonly (readonly (readonly [Spot, Spot])[])[]): ReadonlySet<string> {
  const tips = new Map<string, Set<string>>();
  for (const blades of all) {
    const lying = new Map<string, string[]>();
    for (const [foot, tip] of blades) lying.set(placeKey(foot), [...(lying.get(placeKey(foot)) ?? []), placeKey(tip)]);
    for (const [foot, at] of lying) tips.set(foot, (tips.get(foot) ?? new Set()).add(at.join(";")));
  }
  return new Set([...tips].filter(([, ways]) => ways.size > 1).map(([foot]) => foot));
}

function placesOf({ key, part, positions, blades }: ThrowControl): readonly ThrowPlace[] {
  const places = new Map<string, { foot: Spot; tip: Spot; positions: string[] }>();
  for (const position of positions) {
    for (const [foot, tip] of blades.get(position) ?? []) {
      const at = `${placeKey(foot)} ${placeKey(tip)}`;
      const place = places.get(at) ?? { foot, tip, positions: [] };
      place.positions.push(position);
      places.set(at, place);
    }
  }
  return [...places.values()].map((place) => ({ part, control: key, ...place }));
}

function placeKey({ x, y }: Spot): string {
  return `${x} ${y}`;
}

/** The position in which a control stands in a condition. */
export function standsIn(control: ThrowControl, { set }: Condition): string {
  return set?.[control.key] ?? control.positions[0] ?? "";
}

/**
 * Where a click on a place throws the control: to rest where the blade lies there at rest, else to the first position
 * that brings it there. On a blade that lies there already it lets go what springs back, and takes the next position else.
 */
export function thrownTo(place: ThrowPlace, control: ThrowControl, now: string): string {
  const { positions, springs } = control;
  if (!place.positions.includes(now)) {
    const rest = positions[0]!;
    return place.positions.includes(rest) ? rest : place.positions[0]!;
  }
  return nextPosition(control, now, springs);
}

/** The position after this one, round and round; what springs back is let go. */
export function nextPosition(control: ThrowControl, now: string, springs = control.springs): string {
  const back = springs.get(now);
  if (back !== undefined) return back;
  return control.positions[(control.positions.indexOf(now) + 1) % control.positions.length]!;
}
