import { back, type Direction, ONLY_LEVEL, ONLY_UPRIGHT, type RouteGrid } from "./routeGrid.ts";
import type { Taken, Way } from "./routeTaken.ts";

/** Costs in units of length. A bend, a crossing and a unit run right beside another wire are worth a detour. */
const BEND = 4;
const CROSSING = 6;
const BESIDE = 7;
/** Cost of running over another wire that will then be taken up and laid anew. */
const OVER = 60;
const NEVER = Number.POSITIVE_INFINITY;

/** A place to start from: the node, the direction to leave it in, and the way that leads there from the terminal. */
export interface Start {
  readonly node: number;
  readonly direction: Direction;
  readonly cost: number;
  readonly way: Way;
  /** True on another wire of the same terminal, where this one branches off. */
  readonly isJoint: boolean;
}

/** A place to arrive at, and the way that leads on from there to the terminal. */
export interface Goal {
  readonly node: number;
  /** Direction of the last step into the terminal; null for a joint on another wire of the same terminal. */
  readonly enters: Direction | null;
  /** For a joint: the arms already used there, one bit for each direction. */
  readonly arms: number;
  readonly cost: number;
  readonly way: Way;
}

/** What one search is given beside the grid. */
export interface Task {
  readonly taken: Taken;
  readonly starts: readonly Start[];
  readonly goals: readonly Goal[];
  /** Null keeps clear of all other wires; else those that must stay, and the others may be run over. */
  readonly rigid: Taken | null;
}

/** What steps of one search cost; infinite where they are not allowed. */
export interface StepRules {
  starting(start: Start): number;
  turning(node: number): number;
  entering(node: number, direction: Direction): number;
  arriving(goal: Goal, direction: Direction): number;
  /** Lower bound of the cost from here to any goal. */
  ahead(node: number, direction: Direction): number;
}

/** The rules of a task on a grid. */
export function stepRules(grid: RouteGrid, task: Task): StepRules {
  const { level, upright } = task.taken;
  const { columns, blocked, toll } = grid;
  const rigid = task.rigid;
  const over = (taken: Uint16Array, firm: Uint16Array | undefined, node: number) =>
    taken[node] === 0 ? 0 : firm !== undefined && firm[node] === 0 ? OVER : NEVER;
  const overLevel = (node: number) => over(level, rigid?.level, node);
  const overUpright = (node: number) => over(upright, rigid?.upright, node);
  const turning = (node: number) => (blocked[node] === 0 ? BEND + overLevel(node) + overUpright(node) : NEVER);
  return {
    turning,
    starting: (start) =>
      start.isJoint ? start.cost : start.cost + (start.direction % 2 === 0 ? overLevel : overUpright)(start.node),
    entering(node, direction) {
      const isLevel = direction % 2 === 0;
      if (blocked[node] !== 0 && blocked[node] !== (isLevel ? ONLY_LEVEL : ONLY_UPRIGHT)) return NEVER;
      const along = isLevel ? level : upright;
      const across = isLevel ? upright : level;
      const aside = isLevel ? columns : 1;
      let cost = 1 + toll[node]! + (isLevel ? overLevel : overUpright)(node);
      if (across[node]! > 0) cost += CROSSING;
      if ((along[node - aside] ?? 0) > 0) cost += BESIDE;
      if ((along[node + aside] ?? 0) > 0) cost += BESIDE;
      return cost;
    },
    arriving(goal, direction) {
      if (goal.enters === null) return (goal.arms & (1 << back(direction))) === 0 ? goal.cost : NEVER;
      if (direction === back(goal.enters)) return NEVER;
      return goal.cost + (direction === goal.enters ? 0 : turning(goal.node));
    },
    ahead: estimate(grid, task.goals),
  };
}

/** The way to the box round all goals, and one bend if that box lies off the present line. */
function estimate(grid: RouteGrid, goals: readonly Goal[]): StepRules["ahead"] {
  const xs = goals.map((goal) => goal.node % grid.columns);
  const ys = goals.map((goal) => Math.floor(goal.node / grid.columns));
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return (node, direction) => {
    const x = node % grid.columns;
    const y = (node - x) / grid.columns;
    const across = x < left ? left - x : x > right ? x - right : 0;
    const down = y < top ? top - y : y > bottom ? y - bottom : 0;
    const bends = direction % 2 === 0 ? down > 0 : across > 0;
    return across + down + (bends ? BEND : 0);
  };
}
