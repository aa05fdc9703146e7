import type { ConnectorId, ControlKey, PartId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import { assert } from "../base/outcome.ts";
import type { Amps, Celsius, Ohms } from "../base/units.ts";
import type { Circuit, Condition } from "../circuit/circuit.ts";
import { controlAt, controlsOf, isInLine, springsBack, terminalPoint } from "../circuit/points.ts";
import type { Around, Sees } from "../parts/kind.ts";
import type { Law, Network } from "../solve/element.ts";
import { extended } from "../solve/extend.ts";
import { compile, type Pattern } from "../solve/pattern.ts";
import { type Solution, Solver, type State } from "../solve/solver.ts";
import { copperRatio } from "../trade/wire.ts";
import type { Attachment } from "./attachment.ts";
import type { Fault } from "./fault.ts";
import { type CircuitNetwork, networkOf, type PlacedPart } from "./network.ts";

const OPEN: Law = { law: "resistor", ohms: Number.POSITIVE_INFINITY };
/** State of a fuse that has not melted: it is for `settle.ts` to melt it. */
const GOOD = "good";
/** Ambient of the tables: copper has its stated ohms here. */
export const TABLE_CELSIUS: Celsius = 20;

/** Where searches of a sound circuit ended, by a number that says how its contacts stood. Begins empty; one rig fills it. */
export type Starts = Map<number, State>;

/** A part that may melt: the element that does, and its rating. */
export interface Meltable {
  readonly placed: PlacedPart;
  readonly element: number;
  readonly rating: Amps;
}

/**
 * A circuit wired up with given faults, in a condition, with its relays and fuses in some state: the one thing here
 * that changes. `core/live/settle.ts` brings it to rest after each throw; `core/live/live.ts` reads it out.
 */
export class Rig {
  readonly circuit: Circuit;
  readonly network: CircuitNetwork;
  readonly solver: Solver;
  /** Per element, whether it passes nothing now. */
  readonly isOpen: Uint8Array;
  /** Per element, whether it was laid open, whatever faults do to it; all of them as one number that tells most of these apart. */
  private readonly isLaidOpen: Uint8Array;
  private standing = 0;
  /** Where searches start, by that number. */
  private starts: Starts | null = null;
  /** Where the searches ended by which a sound circuit's starts were filled, one after the other; null where it is not known. */
  readonly trail: (State | null)[] = [];
  /** State of every part that has states: "pulled-in", "melted". */
  readonly states: Map<PartId, string>;
  /** Parts that may move by themselves, and parts that may melt. */
  readonly movable: readonly PlacedPart[];
  readonly meltable: readonly Meltable[];
  /** Parts that ever leave the state they start in. */
  readonly changeable: readonly PlacedPart[];
  /** Parts that have a state, whether or not a fault holds it. */
  private readonly stateful: readonly PlacedPart[];
  private readonly positions: Map<ControlKey, string>;
  private readonly closedKeys: Map<PartId, ReadonlySet<string>>;
  /** What parts see, and what stands around them until a throw changes it: made once, since every pass asks for them. */
  private readonly seen = new Map<PlacedPart, Sees>();
  private readonly surroundings = new Map<PlacedPart, Around>();
  private condition: Condition = {};
  private copied: ReadonlyMap<PartId, string> | null = null;

  /** Where another rig of the same circuit and shape is given up for this one, all is taken over that faults leave alone. */
  constructor(circuit: Circuit, faults: readonly Fault[] = [], clipped: readonly Attachment[] = [], givenUp?: Rig) {
    this.circuit = circuit;
    this.network = networkOf(circuit, faults, clipped);
    const { elements } = this.network;
    const moving = this.network.parts === networkOf(circuit).parts ? soundMoving(circuit) : movingOf(this.network);
    this.stateful = moving.stateful;
    this.changeable = moving.changeable;
    this.movable = moving.movable;
    this.meltable = moving.meltable;
    const taken = givenUp?.circuit === circuit && hasShapeOf(this.network, givenUp.network) ? givenUp : null;
    taken?.toRest();
    this.solver = taken?.solver ?? this.newSolver();
    this.isOpen = taken?.isOpen ?? Uint8Array.from(elements, ({ element }) => (passesNothing(element) ? 1 : 0));
    this.isLaidOpen = taken?.isLaidOpen ?? new Uint8Array(elements.length);
    this.standing = taken?.standing ?? 0;
    this.states = taken?.states ?? new Map();
    this.positions = taken?.positions ?? new Map(controlsOf(circuit).map(({ key, rest }) => [key, rest]));
    this.closedKeys = taken?.closedKeys ?? new Map();
    if (taken) this.takeOverFrom(taken.network);
    if (taken?.network.parts === this.network.parts) return;
    for (const [id, placed] of this.network.parts) {
      if (taken?.network.parts.get(id) === placed) continue;
      this.states.set(id, placed.held ?? placed.kind.start);
      this.pose(placed);
    }
  }

  /** A solver that has at hand what `settle` looks at: what parts that move see of themselves, and what melts. */
  private newSolver(): Solver {
    const { elements } = this.network;
    const seen = this.movable.flatMap((placed) =>
      [...placed.elements.values()].filter((index) => elements[index]!.passes !== "contact"),
    );
    return new Solver(patternOf(this.network), [...seen, ...this.meltable.map(({ element }) => element)]);
  }

  /** Gives the solver, which stands as another network of this shape at rest, the elements that differ. */
  private takeOverFrom({ elements: others, parts }: CircuitNetwork): void {
    const { elements } = this.network;
    for (const id of parts.keys()) {
      if (this.network.parts.has(id)) continue;
      this.states.delete(id);
      this.closedKeys.delete(id);
    }
    for (let index = 0; index < elements.length; index++) {
      const { element } = elements[index]!;
      if (elements[index] === others[index] || element.law === "joint") continue;
      this.solver.setElement(index, element);
      this.isOpen[index] = passesNothing(element) ? 1 : 0;
    }
  }

  /**
   * Has every search of this rig start where one of the sound circuit ended with its contacts standing alike. Without
   * faults, it is this rig that says where it ended.
   */
  startFrom(starts: Starts): void {
    this.starts = starts;
  }

  /** Finds the operating point as everything stands now. */
  solve(): Solution {
    const { starts, solver } = this;
    if (starts === null || solver.isSolved) return solver.solve();
    const start = starts.get(this.standing);
    if (start) solver.startFrom(start);
    const solved = solver.solve();
    if (this.network !== networkOf(this.circuit)) return solved;
    const ended = start ?? solver.save();
    if (!start && ended) starts.set(this.standing, ended);
    // Contacts that stand otherwise under the same number are searched for.
    this.trail.push(start && solved.passes > 0 ? null : ended);
    return solved;
  }

  /** Every control at rest, plugs home, relays released, fuses good; nothing is solved yet. */
  toRest(): void {
    this.surround({});
    for (const placed of this.changeable) this.enter(placed, placed.kind.start);
    for (const { key, rest } of controlsOf(this.circuit)) this.throwControl(key, rest);
  }

  /** Everything a condition says but its controls: plugs, fuses out, battery, outputs driven, engine, ambient. */
  surround(condition: Condition): void {
    const was = this.condition;
    this.condition = { ...condition, set: {} };
    if (was.ambientC !== condition.ambientC)
      for (let index = 0; index < this.isOpen.length; index++) this.lay(index, this.isOpen[index] === 1, true);
    for (const connector of inOneOf(was.apart, condition.apart))
      for (const pin of this.network.pins.get(connector) ?? []) this.lay(pin, this.isApart(connector), false);
    for (const placed of this.moved(was, condition)) this.pose(placed);
  }

  /** Parts that a change of surroundings may move. */
  private moved(was: Condition, now: Condition): Iterable<PlacedPart> {
    const { parts } = this.network;
    if (was.running !== now.running || was.ambientC !== now.ambientC || !isSameDrive(was.drive, now.drive)) {
      this.surroundings.clear();
      return parts.values();
    }
    const ids = [...inOneOf(was.out, now.out), ...inOneOf(was.apart, now.apart)];
    const moved = ids.flatMap((id) => parts.get(id) ?? []);
    if (was.batteryOff === now.batteryOff) return moved;
    return [...moved, ...[...parts.values()].filter(({ part }) => part.kind === "battery")];
  }

  private isApart(connector: ConnectorId): boolean {
    return this.condition.apart?.includes(connector) ?? false;
  }

  /** Puts one control to a position. */
  throwControl(key: ControlKey, position: string): void {
    if (this.positions.get(key) === position) return;
    this.positions.set(key, position);
    const control = controlAt(this.circuit, key);
    assert(control, `no control ${key}`);
    const placed = this.network.parts.get(control.part.id)!;
    this.surroundings.delete(placed);
    this.pose(placed);
  }

  /** A copy of the states, without parts that have none; the same one until a part enters another. */
  statesNow(): ReadonlyMap<PartId, string> {
    if (this.copied) return this.copied;
    const copy = new Map<PartId, string>();
    for (const { part } of this.stateful) copy.set(part.id, this.states.get(part.id)!);
    this.copied = copy;
    return copy;
  }

  /** Puts a part into a state, unless a fault holds it; true where that changed anything. */
  enter(placed: PlacedPart, state: string): boolean {
    if (placed.held !== null || this.states.get(placed.part.id) === state) return false;
    this.states.set(placed.part.id, state);
    this.copied = null;
    this.pose(placed);
    return true;
  }

  /** Keys of the contacts that are closed now, by part. */
  closedNow(): ReadonlyMap<PartId, ReadonlySet<string>> {
    return new Map(this.closedKeys);
  }

  /** Keys of the part's contacts that are closed now. */
  closed(part: PartId): ReadonlySet<string> {
    return this.closedKeys.get(part) ?? new Set();
  }

  /** Position in which a control stands, faults included. */
  position(key: ControlKey): string {
    return this.positions.get(key) ?? "";
  }

  /** Whether any control is held in a position it springs back from. */
  isHeld(): boolean {
    return controlsOf(this.circuit).some(({ key }) => springsBack(this.circuit, key, this.position(key)));
  }

  /** What stands around a part, for its kind's functions. */
  around(placed: PlacedPart): Around {
    const known = this.surroundings.get(placed);
    if (known) return known;
    const around = this.lookAround(placed);
    this.surroundings.set(placed, around);
    return around;
  }

  private lookAround({ part, view, stands }: PlacedPart): Around {
    const positions: Record<string, string> = {};
    for (const { name } of view.controls) {
      const key = view.controls.length === 1 ? part.id : `${part.id}.${name}`;
      positions[name] = stands.get(name) ?? this.positions.get(key) ?? "";
    }
    const drive: Record<string, "on" | "off"> = {};
    for (const [point, level] of Object.entries(this.condition.drive ?? {})) {
      if (point.startsWith(`${part.id}.`)) drive[point.slice(part.id.length + 1)] = level;
    }
    return {
      positions,
      drive,
      engineRunning: this.condition.running ?? false,
      ambientC: this.condition.ambientC ?? TABLE_CELSIUS,
      nominalVolts: this.circuit.nominalVolts,
    };
  }

  /** What a part sees of itself in the solved circuit, now and whenever it looks again. */
  sees(placed: PlacedPart): Sees {
    const known = this.seen.get(placed);
    if (known) return known;
    const sees = this.eyesOf(placed);
    this.seen.set(placed, sees);
    return sees;
  }

  private eyesOf({ part, elements, view }: PlacedPart): Sees {
    const index = (key: string): number | undefined => elements.get(key);
    const ends = new Map(view.terminals.map((name) => [name, this.network.nodes.get(terminalPoint(part, name))!]));
    return {
      volts: (key) => {
        const at = index(key);
        return at === undefined ? 0 : this.solver.voltsAcross(at);
      },
      amps: (key) => {
        const at = index(key);
        return at === undefined ? 0 : this.solver.amps(at);
      },
      terminalVolts: (terminal) => {
        const node = ends.get(terminal);
        assert(node !== undefined, "a part looks at terminals that it has");
        return this.solver.isFloating(node) ? null : this.solver.volts(node);
      },
    };
  }

  /** Drives module outputs by hand on top of the condition, for trying what an unset output could do. */
  driveAlso(drive: Readonly<Record<string, "on" | "off">>): void {
    this.condition = { ...this.condition, drive: { ...this.condition.drive, ...drive } };
    this.surroundings.clear();
    for (const placed of this.network.parts.values()) if (placed.kind.role === "electronics") this.pose(placed);
  }

  /** Looks a part's contacts up again and opens or closes its elements. */
  private pose(placed: PlacedPart): void {
    const { part, kind, view, elements, stuck } = placed;
    const state = this.states.get(part.id)!;
    const closed = new Set(kind.closed(view, state, this.around(placed)));
    for (const [key, isClosed] of stuck) {
      if (isClosed) closed.add(key);
      else closed.delete(key);
    }
    this.closedKeys.set(part.id, closed);
    const isOut =
      this.condition.out?.includes(part.id) || (part.kind === "battery" && this.condition.batteryOff === true);
    for (const [key, index] of elements) {
      const isContact = this.network.elements[index]!.passes === "contact";
      const isApart = isInLine(part) && this.isApart(part.id);
      this.lay(index, isOut || isApart || (isContact && !closed.has(key)), false);
    }
  }

  /** Gives the solver an element's law for the present ambient, or an open where it passes nothing. */
  private lay(index: number, isOpen: boolean, again: boolean): void {
    const { element, copper } = this.network.elements[index]!;
    if (isOpen !== (this.isLaidOpen[index] === 1)) {
      this.isLaidOpen[index] = isOpen ? 1 : 0;
      this.standing ^= scatter(index);
    }
    const wasOpen = this.isOpen[index] === 1;
    const open = isOpen || passesNothing(element);
    if (open === wasOpen && !again) return;
    this.isOpen[index] = open ? 1 : 0;
    if (element.law === "joint") return;
    const law = open ? OPEN : copper ? atAmbient(element, this.condition.ambientC ?? TABLE_CELSIUS) : element;
    // A contact is a resistor shut or open.
    if (element.law === "resistor" && law.law === "resistor") this.solver.setOhms(index, law.ohms);
    else this.solver.setElement(index, { ...law, a: element.a, b: element.b });
  }
}

/** 32 bits for a number, far apart for numbers that are near (the golden ratio's multiplier, folded). */
function scatter(index: number): number {
  const product = Math.imul(index + 1, 0x9e3779b1);
  return Math.imul(product ^ (product >>> 15), 0x85ebca77);
}

const soundPattern = remember((circuit: Circuit) => compile(elementsOf(networkOf(circuit))));

/** The pattern of a network: that of the sound circuit wherever faults leave its shape. */
function patternOf(network: CircuitNetwork): Pattern {
  const sound = networkOf(network.circuit);
  const pattern = soundPattern(network.circuit);
  if (network === sound) return pattern;
  return hasShapeOf(network, sound)
    ? { ...pattern, network: elementsOf(network) }
    : extended(pattern, elementsOf(network));
}

function elementsOf({ nodeCount, elements }: CircuitNetwork): Network {
  return { nodeCount, elements: elements.map(({ element }) => element) };
}

/** The parts of a network that have a state, those that ever leave it, those that do so by themselves, and those that may melt. */
function movingOf({ parts }: CircuitNetwork) {
  const stateful = [...parts.values()].filter(({ kind, held }) => (held ?? kind.start) !== "");
  const changeable = stateful.filter(({ held }) => held === null);
  const movable = changeable.filter(({ kind }) => kind.start !== GOOD);
  const meltable = stateful.filter(({ kind }) => kind.start === GOOD).map(meltableOf);
  return { stateful, changeable, movable, meltable };
}

const soundMoving = remember((circuit: Circuit) => movingOf(networkOf(circuit)));

function meltableOf(placed: PlacedPart): Meltable {
  const element = placed.elements.get("link");
  assert(element !== undefined, `${placed.part.id} has a link that can melt`);
  return { placed, element, rating: placed.view.number("amps") };
}

/** What one list has and the other has not. */
function inOneOf(one: readonly string[] = [], other: readonly string[] = []): readonly string[] {
  return [...one.filter((id) => !other.includes(id)), ...other.filter((id) => !one.includes(id))];
}

function isSameDrive(one: Condition["drive"] = {}, other: Condition["drive"] = {}): boolean {
  const [ones, others] = [Object.entries(one), Object.entries(other)];
  return ones.length === others.length && ones.every(([point, level]) => other[point] === level);
}

/** Whether two networks have the same elements between the same nodes, whatever their laws. */
function hasShapeOf(one: CircuitNetwork, other: CircuitNetwork): boolean {
  if (one.nodeCount !== other.nodeCount || one.elements.length !== other.elements.length) return false;
  return one.elements.every((placed, index) => {
    const { element } = placed;
    if (placed === other.elements[index]) return true;
    const like = other.elements[index]!.element;
    return element.a === like.a && element.b === like.b && (element.law === "joint") === (like.law === "joint");
  });
}

function passesNothing(law: Law): boolean {
  return law.law === "resistor" && law.ohms === Number.POSITIVE_INFINITY;
}

/** Copper's law at an ambient; other laws as they are. */
function atAmbient(law: Law, celsius: Celsius): Law {
  if (celsius === TABLE_CELSIUS || !("ohms" in law)) return law;
  const ohms: Ohms = law.ohms * copperRatio(celsius, TABLE_CELSIUS);
  return { ...law, ohms };
}
