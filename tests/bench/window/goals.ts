import { type Goal, judged } from "../goal.ts";
import type { Moved } from "./moves.ts";
import { SHEET } from "./throws.ts";
import { measureWindow, type WindowFigures, type WindowRow } from "./window.ts";

/** The circuit that goals are set for. */
const GOAL_FROM_WIRES = 2_000;
/** One frame of a screen at 60 Hz, milliseconds. */
const FRAME_MS = 16.7;
/** What a throw may cost of a bare redraw of the same wires, and a cold start of an empty page. */
const THROW_GOAL = 1.3;
const START_GOAL = 2;
/** What an opening may cost of parsing the circuit's JSON and drawing its marks once. */
const OPEN_GOAL = 5;
/** Megabytes of a page with 5,000 parts. */
const MEMORY_GOAL = 400;
const MEMORY_CEILING = 500;
/** Where the run fails: well above what was measured when this was written, so that only a step back is caught. */
const THROW_CEILING = 8;
const START_CEILING = 4;
const OPEN_CEILING = 16;
/** A hand that pauses is told of as rest, and the page renders; a machine in haste makes some pauses of its own. */
const RENDERS_A_FRAME = 0.2;

/** A drag is told of once it is put down; a machine in haste may render something else meanwhile. */
const STRAY_RENDERS = 4;
/** Measures the window, shows the figures and where the goals stand; a line for each ceiling they break. */
export async function benchWindow(): Promise<readonly string[]> {
  const figures = await measureWindow();
  console.table(figures.rows.map(show));
  console.table([figures.start].map(({ emptyMs, hostMs, firstPaintMs }) => showMs({ emptyMs, hostMs, firstPaintMs })));
  const { parts, megabytes, ...large } = figures.large;
  console.table([{ parts, ...showMs(large), "memory, MB": round(megabytes) }]);
  console.log(JSON.stringify(figures));
  return judged(goalsOf(figures));
}

function goalsOf({ rows, large, start }: WindowFigures): readonly Goal[] {
  return [
    ...rows.filter(({ wires }) => wires >= GOAL_FROM_WIRES).flatMap(throwGoals),
    ...rows.flatMap(({ wires, pan, zoom, drag }) => [
      ...moveGoals(`pan, ${wires} wires`, pan),
      ...moveGoals(`zoom, ${wires} wires`, zoom),
      most(`drag, ${wires} wires: React renders`, drag.commits, 0, STRAY_RENDERS),
      most(`drag, ${wires} wires, own work a frame, ms`, drag.frameMs, FRAME_MS),
      most(`drag, ${wires} wires, putting down, ms`, drag.dropMs, FRAME_MS),
    ]),
    most(
      `opening ${large.parts} parts, click to first picture / parsing the JSON and drawing the same marks once`,
      large.openMs / large.onceMs,
      OPEN_GOAL,
      OPEN_CEILING,
    ),
    most("the same, own work of the page alone", large.openOwnMs / large.onceOwnMs, OPEN_GOAL, OPEN_CEILING),
    most(`memory of a page with ${large.parts} parts, MB`, large.megabytes, MEMORY_GOAL, MEMORY_CEILING),
    most("cold start / Chromium with an empty page", start.firstPaintMs / start.emptyMs, START_GOAL, START_CEILING),
  ];
}

function throwGoals({ wires, branch, key, bare }: WindowRow): readonly Goal[] {
  return (["branch", "key"] as const).flatMap((what): readonly Goal[] => {
    const { ownMs } = { branch, key }[what];
    const name = `throw of a ${what}, ${wires} wires`;
    return [
      most(`${name}, own work, ms`, ownMs, FRAME_MS),
      most(`${name} / bare redraw`, ownMs / bare.ownMs, THROW_GOAL, THROW_CEILING),
    ];
  });
}

function moveGoals(name: string, { commits, draws, mostInAFrame }: Moved): readonly Goal[] {
  const rendersAFrame = commits / (draws[SHEET] ?? 0);
  return [
    most(`${name}: React renders a frame`, rendersAFrame, 0, RENDERS_A_FRAME),
    most(`${name}: draws of a layer a frame`, Math.max(...mostInAFrame), 1, 1),
  ];
}

/** Times are shown and not judged: they have no limit. */
function most(name: string, figure: number, goal: number, limit?: number): Goal {
  return { name, figure, best: "most", goal, ...(limit !== undefined && { limit }) };
}

function show({ wires, openMs, branch, key, bare, pan, zoom, drag }: WindowRow) {
  return {
    wires,
    ...showMs({ openMs, branchMs: branch.ownMs, keyMs: key.ownMs, bareMs: bare.ownMs }),
    "branch / bare": round(branch.ownMs / bare.ownMs),
    "commits, renders of a throw": `${branch.commits}, ${branch.renders}`,
    "draws of its layers": branch.draws.join(" "),
    ...showMs({ branchWallMs: branch.wallMs, panMs: pan.frameMs, zoomMs: zoom.frameMs }),
    ...showMs({ dragMs: drag.frameMs, dropMs: drag.dropMs }),
  };
}

function showMs(figures: Readonly<Record<string, number>>): Readonly<Record<string, number>> {
  return Object.fromEntries(
    Object.entries(figures).map(([name, ms]) => [name.replace(/Ms$/, ", ms"), round(ms)] as const),
  );
}

function round(figure: number): number {
  return Math.round(figure * 100) / 100;
}
