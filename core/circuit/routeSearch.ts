import { back, DIRECTIONS, type Direction, nextNode, type RouteGrid } from "./routeGrid.ts";
import { RouteHeap } from "./routeHeap.ts";
import { type StepRules, stepRules, type Task } from "./routeRules.ts";
import type { Way } from "./routeTaken.ts";

/** A way from a terminal to the other, and what it costs in units of length. */
export interface Found {
  readonly way: Way;
  readonly cost: number;
}

const NEARER_FIRST = 1e-3;

/**
 * Finds the cheapest way over one grid; its arrays are kept from search to search. A state is a node times the
 * direction it was reached in. P. Hart, N. Nilsson, B. Raphael, "A Formal Basis for the Heuristic Determination of
 * Minimum Cost Paths" (1968).
 */
export class RouteSearch {
  private readonly grid: RouteGrid;
  /** Cost so far, state before (or -1 - start), and whether settled: one entry a state. */
  private readonly cost: Float64Array;
  private readonly before: Int32Array;
  private readonly isDone: Uint8Array;
  /** Number of the goal on each node, or -1. */
  private readonly goalOn: Int16Array;
  /** States that the last search came to and nodes where it had a goal: only these are cleared for the next. */
  private readonly touched: number[] = [];
  private readonly aimed: number[] = [];
  private readonly heap = new RouteHeap();
  private best = { cost: Number.POSITIVE_INFINITY, state: 0, goal: -1 };

  constructor(grid: RouteGrid) {
    const nodes = grid.columns * grid.rows;
    this.grid = grid;
    this.cost = new Float64Array(nodes * 4).fill(Number.POSITIVE_INFINITY);
    this.before = new Int32Array(nodes * 4);
    this.isDone = new Uint8Array(nodes * 4);
    this.goalOn = new Int16Array(nodes).fill(-1);
  }

  /** The cheapest way from any start to any goal of the task; null where there is none. */
  find(task: Task): Found | null {
    if (task.starts.length === 0 || task.goals.length === 0) return null;
    const rules = stepRules(this.grid, task);
    this.begin(task, rules);
    for (let state = this.heap.pop(); state >= 0; state = this.heap.pop()) {
      if (this.isDone[state] === 1) continue;
      const ahead = rules.ahead(state >> 2, (state & 3) as Direction);
      if (this.cost[state]! + ahead >= this.best.cost) break;
      this.isDone[state] = 1;
      this.expand(state, task, rules);
    }
    return this.best.goal < 0 ? null : this.retrace(task);
  }

  private begin(task: Task, rules: StepRules): void {
    this.clear();
    task.goals.forEach((goal, index) => {
      this.goalOn[goal.node] = index;
      this.aimed.push(goal.node);
    });
    task.starts.forEach((start, index) => {
      const cost = rules.starting(start);
      if (cost === Number.POSITIVE_INFINITY) return;
      const goal = task.goals[this.goalOn[start.node]!];
      if (goal !== undefined && goal.enters !== null)
        this.arrive(start.node, start.direction, cost, -1 - index, task, rules);
      this.open(start.node, start.direction, cost, -1 - index, rules);
    });
  }

  private clear(): void {
    for (const state of this.touched) {
      this.cost[state] = Number.POSITIVE_INFINITY;
      this.isDone[state] = 0;
    }
    for (const node of this.aimed) this.goalOn[node] = -1;
    this.touched.length = 0;
    this.aimed.length = 0;
    this.heap.clear();
    this.best = { cost: Number.POSITIVE_INFINITY, state: 0, goal: -1 };
  }

  private expand(state: number, task: Task, rules: StepRules): void {
    const node = state >> 2;
    const facing = (state & 3) as Direction;
    const here = this.cost[state]!;
    for (const direction of DIRECTIONS) {
      if (direction === back(facing)) continue;
      const turning = direction === facing ? 0 : rules.turning(node);
      const next = turning < Number.POSITIVE_INFINITY ? nextNode(this.grid, node, direction) : -1;
      if (next < 0) continue;
      const goal = task.goals[this.goalOn[next]!];
      if (goal !== undefined && goal.enters === null) {
        this.arrive(next, direction, here + turning + 1, state, task, rules);
        continue;
      }
      const cost = here + turning + rules.entering(next, direction);
      if (cost === Number.POSITIVE_INFINITY) continue;
      if (goal !== undefined) this.arrive(next, direction, cost, state, task, rules);
      this.open(next, direction, cost, state, rules);
    }
  }

  private open(node: number, direction: Direction, cost: number, from: number, rules: StepRules): void {
    const state = node * 4 + direction;
    if (this.isDone[state] === 1 || cost >= this.cost[state]!) return;
    if (this.cost[state] === Number.POSITIVE_INFINITY) this.touched.push(state);
    this.cost[state] = cost;
    this.before[state] = from;
    // Of two ways that promise the same, the one nearer to its goal is followed first.
    this.heap.push(state, cost + rules.ahead(node, direction) * (1 + NEARER_FIRST));
  }

  private arrive(node: number, direction: Direction, cost: number, from: number, task: Task, rules: StepRules): void {
    const goal = this.goalOn[node]!;
    const total = cost + rules.arriving(task.goals[goal]!, direction);
    if (total < this.best.cost) this.best = { cost: total, state: from, goal };
  }

  private retrace(task: Task): Found {
    const goal = task.goals[this.best.goal]!;
    const nodes = [goal.node];
    let state = this.best.state;
    for (; state >= 0; state = this.before[state]!) nodes.push(state >> 2);
    const start = task.starts[-1 - state]!;
    if (start.node !== nodes[nodes.length - 1]) nodes.push(start.node);
    nodes.reverse();
    return { way: [...start.way, ...nodes, ...goal.way], cost: this.best.cost };
  }
}
