import type { Browser, Page } from "@playwright/test";

/** What the trace has to hold: tasks of a thread, the events that a page is told of, and marks set by `watch.js`. */
const CATEGORIES = ["toplevel", "devtools.timeline", "disabled-by-default-devtools.timeline", "blink.user_timing"];

/** One event of Chromium's trace; times in microseconds, `tdur` of the thread's own processor time. */
interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly data?: { readonly type?: string } };
}

type Span = TraceEvent & { readonly dur: number; readonly tdur: number };

/** What the main thread of a page did in a while. */
export interface Traced {
  readonly events: readonly TraceEvent[];
  /** Tasks of the page's main thread, in order. */
  readonly tasks: readonly Span[];
}

/** Runs something with a page watched, and gives what its main thread did meanwhile. */
export async function traced(browser: Browser, page: Page, run: () => Promise<void>): Promise<Traced> {
  await browser.startTracing(page, { categories: CATEGORIES });
  await run();
  const trace: unknown = JSON.parse((await browser.stopTracing()).toString());
  const { traceEvents } = trace as { readonly traceEvents: readonly TraceEvent[] };
  const mark = traceEvents.find(({ name }) => name.startsWith("layer "));
  if (!mark) throw new Error("nothing was drawn while the page was watched");
  const events = traceEvents
    .filter(({ pid, tid }) => pid === mark.pid && tid === mark.tid)
    .toSorted((one, other) => one.ts - other.ts);
  const tasks = events.filter((event): event is Span => event.name === "RunTask" && event.ph === "X");
  return { events, tasks };
}

/** What lies between a click and the frame that shows what it did, in milliseconds. */
export interface ClickToDraw {
  /** Processor time of the page's main thread: scripts, style, painting and, with no GPU, filling the canvas. */
  readonly ownMs: number;
  /** By the clock, waiting for the frame included. */
  readonly wallMs: number;
}

/**
 * From the task that a click came in to the end of the task in which the layer was drawn: the same task commits the frame, and so
 * fills the canvas where no GPU does. Processor time is what counts, since other programs on the machine and the wait for
 * the screen's next frame are no work of ours.
 */
export function clicksToDraws(trace: Traced, layer: number): readonly ClickToDraw[] {
  return eventsToDraws(trace, "click", layer);
}

/** The same for another event that a page is told of, by its name. */
export function eventsToDraws(trace: Traced, event: string, layer: number): readonly ClickToDraw[] {
  return eventsToMarks(trace, event, `layer ${layer}`);
}

/** The same up to another mark that `watch.js` sets. */
export function eventsToMarks({ events, tasks }: Traced, event: string, mark: string): readonly ClickToDraw[] {
  const clicks = events.filter(({ name, args }) => name === "EventDispatch" && args?.data?.type === event);
  const draws = events.filter(({ name }) => name === mark);
  return clicks.flatMap((click) => {
    const draw = draws.find(({ ts }) => ts > click.ts);
    if (!draw) return [];
    const first = tasks.findIndex((task) => holds(task, click));
    const last = tasks.findIndex((task) => holds(task, draw));
    if (first < 0 || last < first) return [];
    const between = tasks.slice(first, last + 1);
    const end = between.at(-1)!;
    return [{ ownMs: ownMs(between), wallMs: (end.ts + end.dur - click.ts) / 1_000 }];
  });
}

/** Processor time, in milliseconds, of every task in which a layer was drawn. */
export function drawingTasks({ events, tasks }: Traced, layer: number): readonly number[] {
  const draws = events.filter(({ name }) => name === `layer ${layer}`);
  return tasks.filter((task) => draws.some((draw) => holds(task, draw))).map((task) => ownMs([task]));
}

function holds({ ts, dur }: Span, event: TraceEvent): boolean {
  return ts <= event.ts && event.ts <= ts + dur;
}

function ownMs(tasks: readonly Span[]): number {
  return tasks.reduce((sum, { tdur }) => sum + tdur, 0) / 1_000;
}
