import type { Circuit } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { Rig } from "../../core/live/rig.ts";
import { reach, settle } from "../../core/live/settle.ts";
import { lotsOf } from "../lots.ts";
import { circuitsOf } from "./circuits.ts";
import { type Goal, judged } from "./goal.ts";
import { median, medianMs } from "./measure.ts";
import { denseMs, inProcessMs, inverseMs, refactorMs, referenceMs } from "./yardsticks.ts";

const SIZES = [50, 200, 1_000, 5_000, 20_000];
/** A dense matrix of more unknowns than this takes minutes. */
const MOST_DENSE = 1_500;
/** In one process the reference takes as long for a circuit of more. */
const MOST_IN_PROCESS = 6_000;

/** What one size came to: medians over its circuits, in milliseconds. */
interface Row {
  readonly nodes: number;
  readonly unknowns: number;
  /** A control thrown, relays and fuses settled; volts that nothing has looked at are worked out when they are read. */
  readonly clickMs: number;
  /** One process of the reference for one operating point. */
  readonly processMs: number;
  /** One operating point of the reference in a process that has the circuit already; null where that takes minutes. */
  readonly inProcessMs: number | null;
  /** One dense LU of the contracted nodal matrix; null where that would take minutes. */
  readonly denseMs: number | null;
  /** One full numeric factorisation of ours. */
  readonly refactorMs: number;
  /** Source ohms of every node from a factor at hand, and all of it: dead network, factor, ohms. */
  readonly inverseMs: number;
  readonly sourceOhmsMs: number;
}

/** A rig at rest, and a click on it: `aim` picks a control and another position by lot, `click` throws it. */
function clicker(seed: number, circuit: Circuit) {
  const rig = new Rig(circuit);
  reach(rig, {});
  const lots = lotsOf(seed);
  const controls = controlsOf(circuit);
  let [key, position] = ["", ""];
  const aim = (): void => {
    const chosen = lots.oneOf(controls);
    key = chosen.key;
    position = lots.oneOf(chosen.control.positions.filter(({ name }) => name !== rig.position(key))).name;
  };
  const click = (): void => {
    rig.throwControl(key, position);
    settle(rig);
  };
  return { rig, aim, click };
}

/** Everything measured on one circuit, its yardsticks at rest. */
function measureOne(seed: number, circuit: Circuit) {
  const { rig, aim, click } = clicker(seed, circuit);
  const clickMs = medianMs(click, { times: 20_000, mostMs: 1_500, before: aim });
  const before = (): void => {
    aim();
    click();
  };
  const sourceOhmsMs = medianMs(() => rig.solver.sourceOhms(), { times: 5_000, mostMs: 1_000, before });
  reach(rig, {});
  const { unknowns } = rig.solver.pattern;
  return {
    unknowns,
    clickMs,
    sourceOhmsMs,
    refactorMs: refactorMs(rig),
    inverseMs: inverseMs(rig),
    processMs: referenceMs(rig),
    inProcessMs: unknowns > MOST_IN_PROCESS ? Number.NaN : inProcessMs(rig),
    denseMs: unknowns > MOST_DENSE ? Number.NaN : denseMs(rig),
  };
}

function measure(nodes: number): Row {
  const circuits = circuitsOf(nodes).map(([seed, circuit]) => measureOne(seed, circuit));
  const middle = (pick: (one: (typeof circuits)[number]) => number): number => median(circuits.map(pick));
  return {
    nodes,
    unknowns: middle(({ unknowns }) => unknowns),
    clickMs: middle(({ clickMs }) => clickMs),
    processMs: middle(({ processMs }) => processMs),
    inProcessMs: nodes > MOST_IN_PROCESS ? null : middle(({ inProcessMs }) => inProcessMs),
    denseMs: nodes > MOST_DENSE ? null : middle(({ denseMs }) => denseMs),
    refactorMs: middle(({ refactorMs }) => refactorMs),
    inverseMs: middle(({ inverseMs }) => inverseMs),
    sourceOhmsMs: middle(({ sourceOhmsMs }) => sourceOhmsMs),
  };
}

// ---------------------------------------------------------------- goals

/** How many clicks a yardstick is worth: what it is to be at a size, and the floor. */
const WORTH: readonly (readonly [
  nodes: number,
  of: "inProcessMs" | "denseMs" | "processMs",
  goal: number,
  floor: number,
])[] = [
  [200, "inProcessMs", 50, 25],
  [1_000, "inProcessMs", 80, 40],
  [5_000, "inProcessMs", 220, 100],
  [200, "denseMs", 200, 100],
  [20_000, "processMs", 500, 200],
];
const YARDSTICKS = {
  inProcessMs: "a point of the reference in-process",
  denseMs: "a dense LU",
  processMs: "a process of the reference",
} as const;
/** A click on a circuit twenty times as large may take so many times as long. */
const GROWTH = { from: 1_000, to: 20_000, goal: 30, ceiling: 60 } as const;
/** Source ohms of all nodes, in full factorisations; a circuit of 50 nodes is done before it has begun. */
const SOURCE = { from: 200, to: 5_000, goal: 1, ceiling: 2 } as const;

function goalsOf(rows: readonly Row[]): readonly Goal[] {
  const at = (nodes: number): Row => rows.find((row) => row.nodes === nodes)!;
  return [
    ...WORTH.map(([nodes, of, goal, limit]): Goal => {
      const row = at(nodes);
      return {
        name: `${nodes} nodes: ${YARDSTICKS[of]} / click`,
        figure: row[of]! / row.clickMs,
        best: "least",
        goal,
        limit,
      };
    }),
    {
      name: `a click at ${GROWTH.to} nodes / at ${GROWTH.from}`,
      figure: at(GROWTH.to).clickMs / at(GROWTH.from).clickMs,
      best: "most",
      goal: GROWTH.goal,
      limit: GROWTH.ceiling,
    },
    ...rows.filter(({ nodes }) => nodes >= SOURCE.from && nodes <= SOURCE.to).flatMap(sourceGoals),
  ];
}

function sourceGoals({ nodes, inverseMs, sourceOhmsMs, refactorMs }: Row): readonly Goal[] {
  return [
    {
      name: `${nodes} nodes: source ohms of all from a factor / full factorisation`,
      figure: inverseMs / refactorMs,
      best: "most",
      goal: SOURCE.goal,
      limit: SOURCE.ceiling,
    },
    {
      name: `${nodes} nodes: the same with the dead network and its factor`,
      figure: sourceOhmsMs / refactorMs,
      best: "most",
      goal: SOURCE.goal,
      limit: SOURCE.ceiling,
    },
  ];
}

function show(row: Row): Readonly<Record<string, string | number>> {
  const us = (ms: number): string => (ms * 1000).toFixed(1);
  return {
    nodes: row.nodes,
    unknowns: row.unknowns,
    "click, us": us(row.clickMs),
    "process, ms": row.processMs.toFixed(1),
    "in-process, ms": row.inProcessMs?.toFixed(2) ?? "-",
    "dense LU, ms": row.denseMs?.toFixed(2) ?? "-",
    "refactor, us": us(row.refactorMs),
    "inverse / refactor": (row.inverseMs / row.refactorMs).toFixed(2),
    "source ohms / refactor": (row.sourceOhmsMs / row.refactorMs).toFixed(2),
  };
}

/** Measures clicks on circuits of all sizes and shows them; a line for each limit they break. */
export function benchClicks(): readonly string[] {
  const rows = SIZES.map(measure);
  console.table(rows.map(show));
  console.log(JSON.stringify(rows));
  return judged(goalsOf(rows));
}
