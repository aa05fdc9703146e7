import type { Around, Doing, FaultEffect, Kind, Part, Sees, Setting } from "../../core/parts/kind.ts";
import { viewOf } from "../../core/parts/view.ts";
import type { Law } from "../../core/solve/element.ts";
import { compile } from "../../core/solve/pattern.ts";
import { Solver } from "../../core/solve/solver.ts";

/** Something wired to a part: its law between two terminals, or to battery negative `-`. */
export type Wired = readonly [a: string, b: string, law: Law];

/** What is set on the bench beside the part itself. */
export interface Bench {
  readonly part?: Partial<Part>;
  readonly wired?: readonly Wired[];
  readonly volts?: number;
  readonly around?: Partial<Around>;
  /** Mode and value of the fault it has. */
  readonly fault?: readonly [mode: string, value?: number];
}

/** The part as it stands once its state moves no more. */
export interface Stood {
  readonly state: string;
  readonly states: readonly string[];
  readonly doing: Doing | null;
  volts(end: string): number;
  amps(key: string): number;
}

/** A battery of these volts and 10 milliohm. */
export function battery(volts: number): Law {
  return { law: "source", volts, ohms: 0.01 };
}

/** A resistor of these ohms. */
export function ohms(value: number): Law {
  return { law: "resistor", ohms: value };
}

/** A filament of this many watts at these volts. */
export function filament(watts: number, volts = 12): Law {
  return { law: "lamp", ratedVolts: volts, ratedAmps: watts / volts };
}

const OPEN: Law = { law: "resistor", ohms: Number.POSITIVE_INFINITY };

/** Wires one part up, lets its state follow what it sees until it is still, and reads it. Throws where it never rests. */
export function onBench(kind: Kind, setting: Bench): Stood {
  const nominalVolts = setting.volts ?? 12;
  const part: Part = { id: "Q1", kind: kind.name, ...setting.part };
  const effects = effectsOf(kind, part, nominalVolts, setting.fault);
  const changed: Record<string, Setting> = {};
  for (const effect of effects) if (effect.does === "set") changed[effect.setting] = effect.value;
  const view = viewOf(kind, part, nominalVolts, changed);
  const around: Around = {
    positions: {},
    drive: {},
    engineRunning: false,
    ambientC: 20,
    nominalVolts,
    ...setting.around,
  };
  const nodes = new Map([["-", 0]]);
  const node = (end: string): number => {
    if (!nodes.has(end)) nodes.set(end, nodes.size);
    return nodes.get(end)!;
  };
  for (const terminal of view.terminals) node(terminal);
  const model = kind.model(view);
  const laid = model.map(({ key, a, b, law }) => ({ ...altered(law, key, effects), a: node(a), b: node(b) }));
  const bridges = effects.flatMap((effect) => (effect.does === "bridge" ? [effect] : []));
  const outside = [
    ...(setting.wired ?? []).map(([a, b, law]) => ({ ...law, a: node(a), b: node(b) })),
    ...bridges.map(({ from, to, ohms: value }) => ({ ...ohms(value), a: node(from), b: node(to) })),
  ];
  const solver = new Solver(compile({ nodeCount: nodes.size, elements: [...laid, ...outside] }));
  const index = (key: string) => model.findIndex((element) => element.key === key);
  const sees: Sees = {
    volts: (key) => (index(key) < 0 ? 0 : solver.voltsAcross(index(key))),
    amps: (key) => (index(key) < 0 ? 0 : solver.amps(index(key))),
    terminalVolts: (terminal) => (solver.isFloating(node(terminal)) ? null : solver.volts(node(terminal))),
  };
  const solve = (state: string): void => {
    const closed = new Set(kind.closed(view, state, around));
    for (const effect of effects) {
      if (effect.does === "stick" && effect.closed) closed.add(effect.element);
      if (effect.does === "stick" && !effect.closed) closed.delete(effect.element);
    }
    model.forEach(({ key, passes }, at) => {
      if (passes === "contact")
        solver.setElement(at, { ...(closed.has(key) ? laid[at]! : OPEN), a: laid[at]!.a, b: laid[at]!.b });
    });
    if (!solver.solve().converged) throw new Error("not solved");
  };
  const held = effects.find((effect) => effect.does === "hold");
  const states = [held?.does === "hold" ? held.state : kind.start];
  for (;;) {
    const state = states.at(-1)!;
    solve(state);
    const next = held ? state : kind.next(view, state, sees, around);
    if (next === state) {
      return {
        state,
        states,
        doing: kind.doing(view, state, sees, around),
        volts: (end) => solver.volts(node(end)),
        amps: sees.amps,
      };
    }
    if (states.length > 10) throw new Error(`chatters: ${states.join(", ")}`);
    states.push(next);
  }
}

function effectsOf(kind: Kind, part: Part, nominalVolts: number, fault: Bench["fault"]): readonly FaultEffect[] {
  if (!fault) return [];
  const [name, value] = fault;
  const mode = kind.faults(viewOf(kind, part, nominalVolts)).find((each) => each.mode === name);
  if (!mode) throw new Error(`${kind.name} has no fault ${name}`);
  return mode.effects(value ?? mode.value?.usual[0] ?? 0);
}

/** A law with a fault in it. Ohms are added to resistors and motors only. */
function altered(law: Law, key: string, effects: readonly FaultEffect[]): Law {
  let now = law;
  for (const effect of effects) {
    if (!("element" in effect) || effect.element !== key) continue;
    if (effect.does === "open") now = OPEN;
    if (effect.does === "set-ohms") now = ohms(effect.ohms);
    if (effect.does === "add-ohms" && (now.law === "resistor" || now.law === "motor")) {
      now = { ...now, ohms: now.ohms + effect.ohms };
    }
  }
  return now;
}
