import type { PartId } from "../base/ids.ts";
import type { Law } from "../solve/element.ts";
import type { State } from "../solve/solver.ts";
import { isUnmoved, type Replacement } from "../solve/unmoved.ts";
import { type CircuitNetwork, networkOf } from "./network.ts";
import type { Rig } from "./rig.ts";

/** Where a sound rig has come to: the states of its parts, and its operating point, null where that is not known. */
export interface Stop {
  readonly states: ReadonlyMap<PartId, string>;
  readonly point: State | null;
}

/** Where a sound rig stands. */
export function stopOf(rig: Rig): Stop {
  return { states: new Map(rig.states), point: rig.solver.isSolved ? (rig.trail.at(-1) ?? null) : null };
}

/** The way of a sound rig through conditions, by the places of a tree of throws. */
export class Course {
  private readonly stops = new Map<object, Stop>();
  /** The operating points on the way to each place and on all ways on from there. */
  private readonly points = new Map<object, readonly (State | null)[]>();

  /** Notes where a sound rig stood at a place, and its trail from the place before to the end of all ways on. */
  note(place: object, stop: Stop, trail: readonly (State | null)[]): void {
    this.stops.set(place, stop);
    this.points.set(place, [stop.point, ...trail]);
  }

  /** Where the sound rig stood at a place. */
  stopAt(place: object): Stop | undefined {
    return this.stops.get(place);
  }

  /** The operating points of the sound rig from the place before to the end of all ways on. */
  pointsFrom(place: object): readonly (State | null)[] {
    return this.points.get(place) ?? [null];
  }
}

/**
 * The course of a sound rig beside which another goes that has resistors in place of some elements. Where these move no
 * volts it goes the same way, and need not be sent there.
 */
export class Beside {
  private readonly course: Course;
  readonly replacements: readonly Replacement[];

  constructor(course: Course, replacements: readonly Replacement[]) {
    this.course = course;
    this.replacements = replacements;
  }

  /** Whether the parts of the rig stand at a place as those of the sound one did. */
  hasStatesOf(rig: Rig, place: object): boolean {
    const stop = this.course.stopAt(place);
    return stop !== undefined && rig.changeable.every(({ part: { id } }) => rig.states.get(id) === stop.states.get(id));
  }

  /** The sound rig's operating point at a place, where no volts differ from it; else null. */
  pointAt(place: object): State | null {
    const point = this.course.stopAt(place)?.point ?? null;
    return point && isUnmoved(point, this.replacements) ? point : null;
  }

  /** Whether no volts are moved on the way to a place and on all ways on from it. */
  isUnmovedFrom(place: object): boolean {
    return this.course.pointsFrom(place).every((point) => point !== null && isUnmoved(point, this.replacements));
  }
}

/**
 * The resistors that faults put in place of elements of the sound network, where that is all they do to what parts see
 * and how they move; else null. Nothing is said of an ambient that changes ohms.
 */
export function replacementsIn(network: CircuitNetwork): readonly Replacement[] | null {
  const sound = networkOf(network.circuit);
  if (network.elements.length !== sound.elements.length) return null;
  for (const [id, placed] of network.parts) if (placed !== sound.parts.get(id) && !placed.movesAsSound) return null;
  const replacements: Replacement[] = [];
  for (const [index, { element }] of network.elements.entries()) {
    const was = sound.elements[index]!.element;
    if (element === was || isSame(element, was)) continue;
    if (element.law !== "resistor" || !isReplaceable(was)) return null;
    replacements.push({ element: index, siemens: 1 / element.ohms });
  }
  // A module looks whether its pins float, which they may do without that a volt is moved.
  const isAnyOut = replacements.some(({ siemens }) => siemens === 0);
  return isAnyOut && hasModule(network) ? null : replacements;
}

function hasModule({ circuit, parts }: CircuitNetwork): boolean {
  return circuit.parts.some(({ id }) => parts.get(id)?.kind.role === "electronics");
}

function isReplaceable(law: Law): boolean {
  if (law.law === "resistor") return law.ohms < Number.POSITIVE_INFINITY;
  return law.law === "lamp" || law.law === "motor" || law.law === "diode";
}

/** Whether two elements have the same law, numbers and ends. */
function isSame(one: Law, other: Law): boolean {
  const others: Readonly<Record<string, unknown>> = { ...other };
  return Object.entries(one).every(([name, value]) => others[name] === value);
}
