import type { Circuit, Connector, Wire } from "../../core/circuit/circuit.ts";
import { isInLine, terminalPoint } from "../../core/circuit/points.ts";
import { kindOf } from "../../core/parts/catalogue.ts";
import type { Part, Settings } from "../../core/parts/kind.ts";
import { viewOf } from "../../core/parts/view.ts";

/** What a wire is made of. */
export interface Gauge {
  readonly mm2: number;
  readonly metres: number;
}

/** A splice that takes another leg for as long as the drawing goes on, or a row of in-line joints that grows. */
export interface Growing {
  readonly id: string;
  count: number;
}

/** A circuit being drawn part by part. Knows all the while how many unknowns a solver would have. */
export class Draft {
  readonly nominalVolts: number;
  /** Nodes of the network so far, hidden ones counted and joined ones counted once. */
  nodes = 0;
  private readonly parts: Part[] = [];
  private readonly wires: Wire[] = [];
  private readonly connectors: Connector[] = [];
  private readonly splices: Growing[] = [];
  private readonly joints: Growing[] = [];
  private readonly plugs = new Map<string, string>();
  private readonly numbers = new Map<string, number>();
  private readonly bodies = new Set<string>();
  private readonly title: string;

  constructor(title: string, nominalVolts: number) {
    this.title = title;
    this.nominalVolts = nominalVolts;
  }

  /** A designator not used yet: F1, F2, ... */
  private fresh(letter: string): string {
    const number = (this.numbers.get(letter) ?? 0) + 1;
    this.numbers.set(letter, number);
    return `${letter}${number}`;
  }

  /** Adds a part; returns its id. */
  add(kindName: string, settings: Settings = {}, more: Partial<Part> = {}): string {
    const kind = kindOf(kindName)!;
    const part: Part = {
      id: this.fresh(kind.letter),
      kind: kindName,
      ...(Object.keys(settings).length > 0 && { settings }),
      ...more,
    };
    this.parts.push(part);
    const view = viewOf(kind, part, this.nominalVolts);
    const elements = kind.model(view);
    const hidden = new Set(elements.flatMap(({ a, b }) => [a, b]).filter((end) => end.startsWith("~")));
    const joined = elements.filter(({ law }) => law.law === "joint").length;
    this.nodes += view.terminals.length + hidden.size - joined;
    return part.id;
  }

  /** Adds a ground point on a body; returns its stud. */
  ground(body: string): string {
    if (!this.bodies.has(body)) this.nodes++;
    this.bodies.add(body);
    return `${this.add("ground", { body })}.stud`;
  }

  /** Puts a plug on all terminals of a part, whose wires then end on its cavities. */
  plug(partId: string): void {
    const part = this.parts.find(({ id }) => id === partId)!;
    const terminals = viewOf(kindOf(part.kind)!, part, this.nominalVolts).terminals;
    const id = this.fresh("X");
    const cavities = Object.fromEntries(
      terminals.map((terminal, index) => [`${index + 1}`, terminalPoint(part, terminal)]),
    );
    for (const [cavity, point] of Object.entries(cavities)) this.plugs.set(point, `${id}-${cavity}`);
    this.connectors.push({ id, rows: [Object.keys(cavities)], cavities });
    this.nodes += terminals.length;
  }

  /** A splice without legs yet; `leg` gives it one at a time. */
  splice(): Growing {
    const splice = { id: this.fresh("SP"), count: 0 };
    this.splices.push(splice);
    this.nodes++;
    return splice;
  }

  /** A new leg of a splice. */
  leg(splice: Growing): string {
    splice.count++;
    this.nodes++;
    return `${splice.id}.${splice.count}`;
  }

  /** A row of in-line joints without places yet. */
  joint(): Growing {
    const joint = { id: this.fresh("X"), count: 0 };
    this.joints.push(joint);
    return joint;
  }

  /** A new place of an in-line joint: its two sides. */
  place(joint: Growing): readonly [string, string] {
    joint.count++;
    this.nodes += 2;
    return [`${joint.id}-${joint.count}a`, `${joint.id}-${joint.count}b`];
  }

  /** A wire between two points. */
  wire(from: string, to: string, { mm2, metres }: Gauge): void {
    const side = (point: string): string => this.plugs.get(point) ?? point;
    const rounded = Math.round(metres * 100) / 100;
    this.wires.push({ id: this.fresh("W"), from: side(from), to: side(to), mm2, metres: Math.max(rounded, 0.05) });
  }

  /** Changes a part's settings after the fact: a fuse's rating is known when all its loads are. */
  set(partId: string, settings: Settings): void {
    const index = this.parts.findIndex(({ id }) => id === partId);
    const part = this.parts[index]!;
    this.parts[index] = { ...part, settings: { ...part.settings, ...settings } };
  }

  /** The circuit as drawn. */
  finish(): Circuit {
    const grown: Part[] = [
      ...this.splices.map(({ id, count }): Part => ({ id, kind: "splice", settings: { legs: Math.max(2, count) } })),
      ...this.joints
        .filter(({ count }) => count > 0)
        .map(({ id, count }): Part => ({ id, kind: "connector", settings: { ways: count } })),
    ];
    const faces = grown.filter(isInLine).map(({ id, settings }): Connector => {
      return { id, rows: [Array.from({ length: Number(settings!.ways) }, (_, index) => `${index + 1}`)] };
    });
    return {
      format: "wirefathom/circuit",
      version: 1,
      title: this.title,
      nominalVolts: this.nominalVolts,
      colourCodes: "iec60757",
      pages: [],
      parts: [...this.parts, ...grown],
      wires: this.wires,
      placement: { parts: {}, wires: {} },
      connectors: [...this.connectors, ...faces],
      access: [],
      reach: {},
      checks: [],
      scenes: [],
    };
  }
}
