import type { ConnectorId, PartId, PointId, WireId } from "../base/ids.ts";
import { remember } from "../base/memo.ts";
import { assert } from "../base/outcome.ts";
import type { Ohms } from "../base/units.ts";
import type { Circuit, Wire } from "../circuit/circuit.ts";
import { netOf } from "../circuit/nets.ts";
import { connectorAt, isInLine, partAt, terminalPoint } from "../circuit/points.ts";
import { kindOf } from "../parts/catalogue.ts";
import type { End, FaultEffect, Kind, Part, PartView, Passing } from "../parts/kind.ts";
import { viewOf } from "../parts/view.ts";
import type { Element, Law, NodeIndex } from "../solve/element.ts";
import type { Attachment, Lead } from "./attachment.ts";
import { type Fault, faultModes, targetOf } from "./fault.ts";
import { ohmsOf, withOhms } from "./ohmsOf.ts";

/** Ohms of a contact between the two halves of a connector (trade guess, from memory: 5 to 10 mohm when new). */
export const PIN_OHMS: Ohms = 0.003;

/** An element of the network, and what it stands for. */
export interface Placed {
  readonly element: Element;
  /** Id of the part, wire, or connector it belongs to; for what is clipped on its name, or "" without one. */
  readonly owner: string;
  readonly key: string;
  readonly passes: Passing;
  readonly copper: boolean;
  /** Ohms that faults add: more than 1 ohm along a path and it is firm no more. */
  readonly addedOhms: Ohms;
  readonly isMeter: boolean;
}

/** A part in the network: its kind, its settings with faults in them, and where its elements are. */
export interface PlacedPart {
  readonly part: Part;
  readonly kind: Kind;
  readonly view: PartView;
  readonly elements: ReadonlyMap<string, number>;
  /** Contacts that no longer obey: key to closed. */
  readonly stuck: ReadonlyMap<string, boolean>;
  /** State it never leaves, or null. */
  readonly held: string | null;
  /** Controls that stand elsewhere than thought: control name to position. */
  readonly stands: ReadonlyMap<string, string>;
  /** Whether faults leave it all but its elements: where it sees what it sees when sound, it moves as it does then. */
  readonly movesAsSound: boolean;
}

/** A circuit with given faults as nodes and elements. Node 0 is the reference battery's negative post. */
export interface CircuitNetwork {
  readonly circuit: Circuit;
  readonly nodeCount: number;
  readonly elements: readonly Placed[];
  /** Node of every point `S5.6`, `X5-6`, of hidden `S5~mid` and shared `=body:chassis` nodes. */
  readonly nodes: ReadonlyMap<string, NodeIndex>;
  readonly parts: ReadonlyMap<PartId, PlacedPart>;
  /** Element at the wire's from end and at its to end; the same one unless a fault sits in its middle. */
  readonly wires: ReadonlyMap<WireId, readonly [number, number]>;
  /** Elements that part when this connector is pulled apart. */
  readonly pins: ReadonlyMap<ConnectorId, readonly number[]>;
  /** Node of "battery +"; node 0 where the circuit has no battery. */
  readonly plus: NodeIndex;
  /** Elements clipped on, in the order given. */
  readonly attached: readonly number[];
}

/** The reference battery: the one marked so, else the first; null where there is none. */
export function referenceBattery(circuit: Circuit): Part | null {
  const batteries = circuit.parts.filter((part) => part.kind === "battery");
  return batteries.find((part) => part.settings?.reference === true) ?? batteries[0] ?? null;
}

/**
 * The battery whose plus is "battery +": the reference one, or the last of those in series with it. Null without battery.
 */
export const plusBattery = remember((circuit: Circuit): Part | null => {
  let last = referenceBattery(circuit);
  const batteries = circuit.parts.filter((part) => part.kind === "battery");
  const visited = new Set<Part>();
  while (last && !visited.has(last)) {
    visited.add(last);
    const plus = netOf(circuit, terminalPoint(last, "+"));
    const next = batteries.find(
      (part) => plus !== undefined && !visited.has(part) && netOf(circuit, terminalPoint(part, "-")) === plus,
    );
    if (!next) return last;
    last = next;
  }
  return last;
});

/** The node that a lead is on. */
export function leadNode({ nodes, plus }: CircuitNetwork, lead: Lead): NodeIndex {
  if (lead === "battery +") return plus;
  return lead === "battery -" ? 0 : nodes.get(lead)!;
}

/**
 * Lays a circuit out as a network, with faults planted and things clipped on. Nothing is thrown: contacts stand open. What
 * faults leave alone is taken from the sound network, elements and nodes under the same numbers; what they add comes last.
 */
export function networkOf(
  circuit: Circuit,
  faults: readonly Fault[] = [],
  clipped: readonly Attachment[] = [],
): CircuitNetwork {
  const sound = soundOf(circuit);
  return faults.length + clipped.length === 0 ? sound.network : new Layout(circuit, sound).fail(faults).finish(clipped);
}

/** A circuit without faults, laid out once. */
interface Sound {
  readonly network: CircuitNetwork;
  /** Element of each place of a fitted connector that carries a terminal. */
  readonly pinAt: ReadonlyMap<PointId, number>;
}

const soundOf = remember((circuit: Circuit): Sound => {
  const layout = new Layout(circuit, null);
  for (const part of circuit.parts) layout.placePart(part);
  for (const wire of circuit.wires) layout.placeWire(wire);
  for (const connector of circuit.connectors)
    for (const [cavity, terminal] of Object.entries(connector.cavities ?? {}))
      layout.placePin(connector.id, `${connector.id}-${cavity}`, terminal);
  return { network: layout.finish([]), pinAt: layout.pinAt };
});

interface Bridge {
  readonly from: string;
  readonly to: string;
  readonly ohms: Ohms;
  readonly owner: string;
}

class Layout {
  readonly pinAt = new Map<PointId, number>();
  private readonly elements: Placed[];
  /** Those of the sound network until something is added. */
  private nodes: ReadonlyMap<string, NodeIndex>;
  private parts: ReadonlyMap<PartId, PlacedPart>;
  private wires: ReadonlyMap<WireId, readonly [number, number]>;
  private readonly pins = new Map<ConnectorId, number[]>();
  private readonly bridges: Bridge[] = [];
  private readonly effects = new Map<string, FaultEffect[]>();
  private readonly midWires = new Set<WireId>();
  private readonly reference: Part | null;
  private readonly circuit: Circuit;
  private readonly sound: Sound | null;

  /** Begins with nothing, or with a copy of what is sound. */
  constructor(circuit: Circuit, sound: Sound | null) {
    this.circuit = circuit;
    this.sound = sound;
    this.reference = referenceBattery(circuit);
    this.elements = [...(sound?.network.elements ?? [])];
    this.nodes = sound?.network.nodes ?? new Map();
    this.parts = sound?.network.parts ?? new Map();
    this.wires = sound?.network.wires ?? new Map();
    if (this.reference) this.node(terminalPoint(this.reference, "-"));
    else this.node("=body:chassis");
  }

  /** Plants faults in what was sound. */
  fail(faults: readonly Fault[]): this {
    for (const fault of faults) this.gather(fault);
    for (const id of new Set([...this.effects.keys(), ...this.midWires])) this.placeAgain(id);
    this.placeBridges();
    return this;
  }

  private placeAgain(id: string): void {
    const { circuit } = this;
    const target = targetOf(circuit, id)!;
    const part = partAt(circuit, target.is === "cavity" ? target.connector : id);
    if (target.is === "wire") this.placeWire(circuit.wires.find((wire) => wire.id === id)!);
    else if (part) this.placePart(part);
    else if (target.is === "cavity") {
      const terminal = connectorAt(circuit, target.connector)?.cavities?.[target.cavity];
      if (terminal !== undefined) this.placePin(target.connector, id, terminal);
    }
  }

  /** Number of a node by name; new names get the next number. */
  private node(name: string): NodeIndex {
    const known = this.nodes.get(name);
    if (known !== undefined) return known;
    this.nodes = ours(this.nodes, this.sound?.network.nodes).set(name, this.nodes.size);
    return this.nodes.size - 1;
  }

  private gather(fault: Fault): void {
    const target = targetOf(this.circuit, fault.target);
    assert(target, `fault on ${fault.target}, which is not in the circuit`);
    const mode = faultModes(this.circuit, target).find((candidate) => candidate.mode === fault.mode);
    assert(mode, `${fault.target} has no fault ${fault.mode}`);
    const effects = mode.effects(typeof fault.value === "number" ? fault.value : (mode.value?.usual[0] ?? 0));
    const list = this.effects.get(fault.target) ?? [];
    list.push(...effects);
    this.effects.set(fault.target, list);
    if (target.is !== "wire") return;
    for (const effect of effects) {
      if (effect.does !== "bridge") continue;
      this.midWires.add(target.id);
      const other = typeof fault.value === "string" ? fault.value : "";
      if (effect.to === "~other") this.midWires.add(other);
      const to = effect.to === "~other" ? `${other}~mid` : effect.to;
      this.bridges.push({ from: `${target.id}~mid`, to, ohms: effect.ohms, owner: target.id });
    }
  }

  private effectsOn(target: string): readonly FaultEffect[] {
    return this.effects.get(target) ?? [];
  }

  /** Adds an element, or puts it in the place of a sound one, altered by the effects that name its key; returns its index. */
  private add(
    ends: readonly [string, string],
    law: Law,
    of: Omit<Placed, "element" | "addedOhms" | "isMeter">,
    effects: readonly FaultEffect[],
    sound?: number,
  ): number {
    let changed: Law = law;
    let passes = of.passes;
    let addedOhms = 0;
    let far = ends[1];
    for (const effect of effects) {
      if (!("element" in effect) || effect.element !== of.key) continue;
      if (effect.does === "open") changed = { law: "resistor", ohms: Number.POSITIVE_INFINITY };
      else if (effect.does === "set-ohms") changed = { law: "resistor", ohms: effect.ohms };
      else if (effect.does === "add-ohms") {
        const longer = withOhms(changed, effect.ohms);
        if (longer) {
          changed = longer;
          addedOhms += effect.ohms;
        } else {
          const inner = `${of.owner}~${of.key}+`;
          this.push(
            [inner, far],
            { law: "resistor", ohms: effect.ohms },
            { ...of, key: `${of.key}+`, passes: "load" },
            effect.ohms,
          );
          far = inner;
        }
      }
      if (effect.does === "open" && passes === "source") passes = "load";
    }
    return this.push([ends[0], far], changed, { ...of, passes }, addedOhms, sound);
  }

  private push(
    ends: readonly [string, string],
    law: Law,
    of: Omit<Placed, "element" | "addedOhms" | "isMeter">,
    addedOhms: Ohms,
    index = this.elements.length,
  ): number {
    const element = { ...law, a: this.node(ends[0]), b: this.node(ends[1]) };
    this.elements[index] = { ...of, element, addedOhms, isMeter: false };
    return index;
  }

  /** Lays a part out; one that is clipped on has its terminals where the leads are. */
  placePart(part: Part, leads: readonly [string, string] | null = null): void {
    const kind = kindOf(part.kind);
    assert(kind, `unknown kind ${part.kind}`);
    const effects = this.effectsOn(part.id);
    const settings = Object.fromEntries(
      effects.flatMap((effect) => (effect.does === "set" ? [[effect.setting, effect.value]] : [])),
    );
    const view = viewOf(kind, part, this.circuit.nominalVolts, settings);
    if (!leads) for (const terminal of view.terminals) this.node(terminalPoint(part, terminal));
    const name = (end: End): string => leads?.[view.terminals.indexOf(end)] ?? this.endName(part, end);
    // An in-line joint's places are cavities: their faults are filed under `X30-1`.
    const keyed = (key: string) => (isInLine(part) ? renamed(this.effectsOn(`${part.id}-${key}`), key) : effects);
    const sound = this.sound?.network.parts.get(part.id)?.elements;
    const elements = new Map<string, number>();
    for (const { key, a, b, law, passes, copper } of kind.model(view)) {
      const index = this.add(
        [name(a), name(b)],
        law,
        { owner: part.id, key, passes, copper: copper ?? false },
        keyed(key),
        sound?.get(key),
      );
      elements.set(key, index);
      if (isInLine(part) && !sound) this.pinsOf(part.id).push(index);
    }
    assert(!sound || [...sound.keys()].every((key) => elements.has(key)), `a fault leaves ${part.id} its elements`);
    for (const effect of effects) {
      if (effect.does === "bridge")
        this.bridges.push({ from: name(effect.from), to: name(effect.to), ohms: effect.ohms, owner: part.id });
    }
    this.parts = ours(this.parts, this.sound?.network.parts).set(part.id, {
      part,
      kind,
      view,
      elements,
      stuck: new Map(effects.flatMap((each) => (each.does === "stick" ? [[each.element, each.closed] as const] : []))),
      held: effects.find((effect) => effect.does === "hold")?.state ?? null,
      stands: new Map(
        effects.flatMap((effect) => (effect.does === "stand" ? [[effect.control, effect.position] as const] : [])),
      ),
      movesAsSound: effects.every((effect) => "element" in effect && effect.does !== "stick"),
    });
  }

  private endName(part: Part, end: End): string {
    if (end.startsWith("=")) return end;
    return end.startsWith("~") ? `${part.id}${end}` : terminalPoint(part, end);
  }

  private pinsOf(connector: ConnectorId): number[] {
    const list = this.pins.get(connector) ?? [];
    this.pins.set(connector, list);
    return list;
  }

  placeWire(wire: Wire): void {
    const ohms = ohmsOf(wire);
    const of = { owner: wire.id, key: "wire", passes: "conductor", copper: true } as const;
    const effects = this.effectsOn(wire.id);
    const sound = this.sound?.network.wires.get(wire.id)?.[0];
    if (!this.midWires.has(wire.id)) {
      const index = this.add([wire.from, wire.to], { law: "resistor", ohms }, of, effects, sound);
      if (sound === undefined) this.wires = ours(this.wires, this.sound?.network.wires).set(wire.id, [index, index]);
      return;
    }
    const half: Law = { law: "resistor", ohms: ohms / 2 };
    const middle = `${wire.id}~mid`;
    const first = this.add([wire.from, middle], half, of, effects, sound);
    const second = this.add([middle, wire.to], half, { ...of, key: "wire-far" }, []);
    this.wires = ours(this.wires, this.sound?.network.wires).set(wire.id, [first, second]);
  }

  placePin(connector: ConnectorId, point: PointId, terminal: PointId): void {
    const of = { owner: connector, key: "pin", passes: "conductor", copper: false } as const;
    const sound = this.sound?.pinAt.get(point);
    const index = this.add([point, terminal], { law: "resistor", ohms: PIN_OHMS }, of, this.effectsOn(point), sound);
    if (sound !== undefined) return;
    this.pinsOf(connector).push(index);
    this.pinAt.set(point, index);
  }

  private placeBridges(): void {
    for (const { from, to, ohms, owner } of this.bridges) {
      const end = (name: string): string =>
        name === "=return" ? this.leadName("battery -") : name === "=feed" ? this.leadName("battery +") : name;
      this.push(
        [end(from), end(to)],
        { law: "resistor", ohms },
        { owner, key: "bridge", passes: "conductor", copper: false },
        0,
      );
    }
  }

  private leadName(lead: Lead): string {
    if (lead !== "battery +" && lead !== "battery -") return lead;
    const battery = lead === "battery +" ? plusBattery(this.circuit) : this.reference;
    return battery ? terminalPoint(battery, lead === "battery +" ? "+" : "-") : "=body:chassis";
  }

  finish(clipped: readonly Attachment[]): CircuitNetwork {
    const attached = clipped.map((each) => {
      const [red, black] = [this.leadName(each.red), this.leadName(each.black)];
      if ("part" in each) {
        this.placePart(each.part, [red, black]);
        return this.elements.length - 1;
      }
      const element = { ...each.law, a: this.node(red), b: this.node(black) };
      const { isMeter, name: owner = "" } = each;
      this.elements.push({ element, owner, key: "clipped", passes: "load", copper: false, addedOhms: 0, isMeter });
      return this.elements.length - 1;
    });
    const { circuit, elements, nodes, parts, wires } = this;
    return {
      circuit,
      nodeCount: nodes.size,
      elements,
      nodes,
      parts,
      wires,
      pins: this.sound?.network.pins ?? this.pins,
      plus: this.reference ? this.node(this.leadName("battery +")) : 0,
      attached,
    };
  }
}

/** A map that may be added to: a copy while it is the sound network's. */
function ours<K, V>(map: ReadonlyMap<K, V>, sound: ReadonlyMap<K, V> | undefined): Map<K, V> {
  return map === sound ? new Map(map) : (map as Map<K, V>);
}

/** A cavity's faults speak of its `pin`; in an in-line joint the element carries the cavity's number. */
function renamed(effects: readonly FaultEffect[], key: string): readonly FaultEffect[] {
  return effects.map((effect) => ("element" in effect ? { ...effect, element: key } : effect));
}
