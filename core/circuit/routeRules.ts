import type { Direction } from "./routeGrid.ts";
import type { Taken, Way } from "./routeTaken.ts";

/** Cost of a bend in units of length, and of running over another wire that will then be taken up and laid anew. */
export const BEND = 4;
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
  readonly starts: readonly Start[];
  readonly goals: readonly Goal[];
  /** Null keeps clear of all other wires; else those that must stay, and the others may be run over. */
  readonly rigid: Taken | null;
}

/** What it costs to run level (0) or upright (1) over wires on a node: infinite where that is not allowed. */
export function overCost(taken: Taken, rigid: Taken | null, node: number, turn: number): number {
  if ((turn === 0 ? taken.level : taken.upright)[node] === 0) return 0;
  return rigid !== null && (turn === 0 ? rigid.level : rigid.upright)[node] === 0 ? OVER : NEVER;
}

/** The box round some nodes, as columns and rows of the grid. */
export interface GoalBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The box round all goals. */
export function boxRound(goals: readonly Goal[], columns: number): GoalBox {
  const xs = goals.map((goal) => goal.node % columns);
  const ys = goals.map((goal) => Math.floor(goal.node / columns));
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Least cost from a node, entered in a direction, to a box: the way there, and one bend if it lies off the present line. */
export function costAhead(box: GoalBox, x: number, y: number, direction: Direction): number {
  const across = x < box.left ? box.left - x : x > box.right ? x - box.right : 0;
  const down = y < box.top ? box.top - y : y > box.bottom ? y - box.bottom : 0;
  const bends = (direction & 1) === 0 ? down > 0 : across > 0;
  return across + down + (bends ? BEND : 0);
}
