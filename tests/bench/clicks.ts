import type { Circuit } from "../../core/circuit/circuit.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { Rig } from "../../core/live/rig.ts";
import { reach, settle } from "../../core/live/settle.ts";
import { lotsOf } from "../lots.ts";
import { circuitsOf } from "./circuits.ts";
import { median, medianMs } from "./measure.ts";
import { denseMs, inverseMs, refactorMs, referenceMs } from "./yardsticks.ts";

const SIZES = [50, 200, 1_000, 5_000];
/** A dense matrix of more unknowns than this takes minutes. */
const MOST_DENSE = 1_500;

/** What one size came to: medians over its circuits, in milliseconds. */
interface Row {
  readonly nodes: number;
  readonly unknowns: number;
  /** A control thrown, relays and fuses settled: every volt and amp is there to be read. */
  readonly clickMs: number;
  /** One process of the reference for one operating point. */
  readonly processMs: number;
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
    denseMs: nodes > MOST_DENSE ? null : middle(({ denseMs }) => denseMs),
    refactorMs: middle(({ refactorMs }) => refactorMs),
    inverseMs: middle(({ inverseMs }) => inverseMs),
    sourceOhmsMs: middle(({ sourceOhmsMs }) => sourceOhmsMs),
  };
}

// ---------------------------------------------------------------- floors

/** At about 200 nodes a dense factorisation takes at least as many clicks. */
const DENSE_FLOOR = 100;
/** And a process of the reference; most of that is its start, which takes 10 ms on one machine and 30 ms on another. */
const PROCESS_FLOOR = 800;
/** Source ohms of all nodes cost at most as many full factorisations; a circuit of 50 nodes is done before it has begun. */
const SOURCE_CEILING = 2;
const CEILING_FROM = 200;

/** A line for each floor that a row falls below. */
function belowFloor(row: Row): readonly string[] {
  const lines: string[] = [];
  const source = row.sourceOhmsMs / row.refactorMs;
  if (row.nodes >= CEILING_FROM && !(source <= SOURCE_CEILING)) {
    lines.push(
      `${row.nodes} nodes: all source ohms cost ${source.toFixed(2)} factorisations, at most ${SOURCE_CEILING} are allowed`,
    );
  }
  if (row.nodes !== 200) return lines;
  const [dense, process] = [(row.denseMs ?? 0) / row.clickMs, row.processMs / row.clickMs];
  if (!(dense >= DENSE_FLOOR))
    lines.push(`200 nodes: a dense LU is worth ${dense.toFixed(0)} clicks, the floor is ${DENSE_FLOOR}`);
  if (!(process >= PROCESS_FLOOR))
    lines.push(`200 nodes: a reference process is worth ${process.toFixed(0)} clicks, the floor is ${PROCESS_FLOOR}`);
  return lines;
}

function show(row: Row): Readonly<Record<string, string | number>> {
  const us = (ms: number): string => (ms * 1000).toFixed(1);
  return {
    nodes: row.nodes,
    unknowns: row.unknowns,
    "click, us": us(row.clickMs),
    "process, ms": row.processMs.toFixed(1),
    "dense LU, ms": row.denseMs?.toFixed(2) ?? "-",
    "process / click": Math.round(row.processMs / row.clickMs),
    "dense LU / click": row.denseMs === null ? "-" : Math.round(row.denseMs / row.clickMs),
    "refactor, us": us(row.refactorMs),
    "inverse / refactor": (row.inverseMs / row.refactorMs).toFixed(2),
    "source ohms / refactor": (row.sourceOhmsMs / row.refactorMs).toFixed(2),
  };
}

/** Measures clicks on circuits of all sizes and shows them; a line for each floor they fall below. */
export function benchClicks(): readonly string[] {
  const rows = SIZES.map(measure);
  console.table(rows.map(show));
  console.log(JSON.stringify(rows));
  return rows.flatMap(belowFloor);
}
