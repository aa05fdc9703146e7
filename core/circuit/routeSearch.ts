import { back, DIRECTIONS, type Direction, type RouteGrid } from "./routeGrid.ts";
import { RouteHeap } from "./routeHeap.ts";
import { BEND, boxRound, costAhead, type Goal, type GoalBox, overCost, type Start, type Task } from "./routeRules.ts";
import { Taken, type Way } from "./routeTaken.ts";
import { TileSet } from "./routeTiles.ts";

/** A way from a terminal to the other, and what it costs in units of length. */
export interface Found {
  readonly way: Way;
  readonly cost: number;
}

const NEVER = Number.POSITIVE_INFINITY;
const NEARER_FIRST = 1e-3;

/**
 * Finds the cheapest way over one grid; its arrays are kept from search to search. A state is a node times the
 * direction it was reached in. P. Hart, N. Nilsson, B. Raphael, "A Formal Basis for the Heuristic Determination of
 * Minimum Cost Paths" (1968).
 */
export class RouteSearch {
  private grid: RouteGrid;
  /** What is taken on it: the search goes round that. */
  readonly taken: Taken;
  /**
   * Cost so far, 0 where none is known, state before (or -1 - start), and whether settled: one entry a state. Most are never
   * come to, and what is never written takes no memory.
   */
  private readonly cost: Float32Array;
  private readonly before: Int32Array;
  private readonly isDone: Uint8Array;
  /** Number of the goal on each node, counted from 1; 0 for none. */
  private readonly goalOn: Uint16Array;
  /** States that the last search came to and nodes where it had a goal: only these are cleared for the next. */
  private readonly touched: number[] = [];
  private touchedCount = 0;
  private readonly aimed: number[] = [];
  /** The tiles that the last search looked at. */
  private readonly seen: TileSet;
  private readonly heap = new RouteHeap();
  private task: Task = { starts: [], goals: [], rigid: null };
  private box: GoalBox = { left: 0, right: 0, top: 0, bottom: 0 };
  /** What every way costs at least beyond the steps to the box of its goals. */
  private last = 0;
  private best = { cost: NEVER, state: 0, goal: -1 };

  /** Searches on a grid with nothing taken on it yet. */
  constructor(grid: RouteGrid) {
    const nodes = grid.columns * grid.rows;
    this.grid = grid;
    this.taken = new Taken(grid);
    this.cost = new Float32Array(nodes * 4);
    this.before = new Int32Array(nodes * 4);
    this.isDone = new Uint8Array(nodes * 4);
    this.goalOn = new Uint16Array(nodes);
    this.seen = new TileSet(grid);
  }

  /** Begins anew with nothing taken, on another grid of the same size. */
  moveTo(grid: RouteGrid): void {
    this.grid = grid;
    this.taken.moveTo(grid);
  }

  /** The tiles of everything that the last search depended on, and of these nodes. */
  tilesWith(nodes: readonly number[]): readonly number[] {
    for (const node of nodes) this.seen.add(node);
    return this.seen.tiles();
  }

  /** The cheapest way from any start to any goal of the task; null where there is none. */
  find(task: Task): Found | null {
    this.clear();
    if (task.starts.length === 0 || task.goals.length === 0) return null;
    this.begin(task);
    const { columns } = this.grid;
    for (let state = this.heap.pop(); state >= 0; state = this.heap.pop()) {
      if (this.isDone[state] === 1) continue;
      const node = state >> 2;
      const facing = (state & 3) as Direction;
      const x = node % columns;
      const y = (node - x) / columns;
      if (this.cost[state]! + costAhead(this.box, x, y, facing) + this.last >= this.best.cost) break;
      this.isDone[state] = 1;
      this.expand(state, x, y);
    }
    return this.best.goal < 0 ? null : this.retrace();
  }

  private begin(task: Task): void {
    this.task = task;
    this.box = boxRound(task.goals, this.grid.columns);
    this.last = Math.min(...task.goals.map((goal) => this.lastCost(goal)));
    task.goals.forEach((goal, index) => {
      this.goalOn[goal.node] = index + 1;
      this.aimed.push(goal.node);
      this.seen.add(goal.node);
    });
    task.starts.forEach((start, index) => {
      this.seen.add(start.node);
      const cost = this.startCost(start);
      if (cost === NEVER) return;
      const { node, direction } = start;
      const goal = task.goals[this.goalOn[node]! - 1];
      if (goal !== undefined && goal.enters !== null) this.arrive(node, direction, cost, -1 - index);
      const x = node % this.grid.columns;
      this.open(node, x, (node - x) / this.grid.columns, direction, cost, -1 - index);
    });
  }

  /** What the last step to a goal costs at least beyond its length, and all from there on. */
  private lastCost({ node, enters, cost }: Goal): number {
    if (enters === null) return cost;
    return cost + Math.min(this.taken.enterLevel[node]!, this.taken.enterUpright[node]!) - 1;
  }

  /** Forgets the last search, and the tiles that it looked at. */
  clear(): void {
    for (let i = 0; i < this.touchedCount; i++) {
      const state = this.touched[i]!;
      this.cost[state] = 0;
      this.isDone[state] = 0;
    }
    this.touchedCount = 0;
    this.seen.clear();
    for (const node of this.aimed) this.goalOn[node] = 0;
    this.aimed.length = 0;
    this.heap.clear();
    this.best = { cost: NEVER, state: 0, goal: -1 };
  }

  private expand(state: number, x: number, y: number): void {
    const { columns, rows, step } = this.grid;
    const { goalOn, taken } = this;
    const { rigid, goals } = this.task;
    const node = state >> 2;
    const facing = (state & 3) as Direction;
    const straight = this.cost[state]!;
    const turned = straight + this.turnCost(node);
    for (const direction of DIRECTIONS) {
      if (direction === back(facing)) continue;
      const here = direction === facing ? straight : turned;
      if (here === NEVER) continue;
      const nextX = direction === 0 ? x + 1 : direction === 2 ? x - 1 : x;
      const nextY = direction === 1 ? y + 1 : direction === 3 ? y - 1 : y;
      if (nextX < 0 || nextX >= columns || nextY < 0 || nextY >= rows) continue;
      const next = node + step[direction];
      const goal = goalOn[next]!;
      if (goal !== 0 && goals[goal - 1]!.enters === null) {
        this.arrive(next, direction, here + 1, state);
        continue;
      }
      const turn = direction & 1;
      const cost =
        here + (turn === 0 ? taken.enterLevel : taken.enterUpright)[next]! + overCost(taken, rigid, next, turn);
      if (cost === NEVER) continue;
      if (goal !== 0) this.arrive(next, direction, cost, state);
      this.open(next, nextX, nextY, direction, cost, state);
    }
  }

  private open(node: number, x: number, y: number, direction: Direction, cost: number, from: number): void {
    const state = node * 4 + direction;
    const known = this.cost[state]!;
    if (this.isDone[state] === 1 || (known !== 0 && cost >= known)) return;
    if (known === 0) {
      this.touched[this.touchedCount++] = state;
      this.seen.addAt(x, y);
    }
    this.cost[state] = cost;
    this.before[state] = from;
    // Of two ways that promise the same, the one nearer to its goal is followed first.
    this.heap.push(state, cost + costAhead(this.box, x, y, direction) * (1 + NEARER_FIRST));
  }

  private arrive(node: number, direction: Direction, cost: number, from: number): void {
    const index = this.goalOn[node]! - 1;
    const { enters, arms, cost: last } = this.task.goals[index]!;
    const isOpen = enters === null ? (arms & (1 << back(direction))) === 0 : direction !== back(enters);
    if (!isOpen) return;
    const total = cost + (enters === null || enters === direction ? last : last + this.turnCost(node));
    if (total < this.best.cost) this.best = { cost: total, state: from, goal: index };
  }

  private startCost({ node, direction, cost, isJoint }: Start): number {
    return isJoint ? cost : cost + overCost(this.taken, this.task.rigid, node, direction & 1);
  }

  private turnCost(node: number): number {
    if (this.grid.blocked[node] !== 0) return NEVER;
    const { taken } = this;
    const { rigid } = this.task;
    return BEND + overCost(taken, rigid, node, 0) + overCost(taken, rigid, node, 1);
  }

  private retrace(): Found {
    const goal = this.task.goals[this.best.goal]!;
    const nodes = [goal.node];
    let state = this.best.state;
    for (; state >= 0; state = this.before[state]!) nodes.push(state >> 2);
    const start = this.task.starts[-1 - state]!;
    if (start.node !== nodes[nodes.length - 1]) nodes.push(start.node);
    nodes.reverse();
    return { way: [...start.way, ...nodes, ...goal.way], cost: this.best.cost };
  }
}
