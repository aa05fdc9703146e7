import type { Outcome, Refusal } from "../../core/base/outcome.ts";
import { printedSpot, underlayAt } from "../../core/circuit/underlays.ts";
import { arrangeParts } from "../../core/edit/commands/arrangeParts.ts";
import { letGo } from "../../core/edit/commands/letGo.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { positionNow, throwControl } from "../../core/edit/commands/throwControl.ts";
import { cancel, type Desk, keep, mark, perform, redo, undo } from "../../core/edit/history.ts";
import { nextComing, timePassed } from "../../core/edit/timePassed.ts";
import type { Play } from "../../core/lesson/play.ts";
import { raised, revealed, takenBack } from "../../core/lesson/predict.ts";
import { HAND, isHand } from "../canvas/tool.ts";
import { withAsked, withNext, withQuestion } from "../class/asking.ts";
import { reduceCupboard } from "../instructor/cupboard.ts";
import type { BenchAction, Command } from "./action.ts";
import { stoodBefore } from "./changedNow.ts";
import { pickedFor } from "./jumpering.ts";
import { pageOf, readAt, thingNamed } from "./places.ts";
import type { Open, Thing } from "./state.ts";
import { begunAnew, traced } from "./traces.ts";

/** The bench after an action, or why it was refused. */
export type Answered = Outcome<Open>;

const MOST_RECENT = 4;

/**
 * What an action makes of the open bench. Nothing else writes it. A sample whose circuit is edited, or on which a job is in
 * hand, is no trial any more.
 */
export function reduceBench(open: Open, action: BenchAction): Answered {
  const isUndone = action.do === "undo" || action.do === "redo";
  const after = withStood(open, withTraces(open, answered(open, action), isUndone));
  if (!after.ok || !open.isTrial) return after;
  const { circuit, job } = after.value.desk.bench;
  if (circuit === open.desk.bench.circuit && job === null) return after;
  return fine({ ...after.value, isTrial: false });
}

/** How things stood before an action is kept, to be seen what it changed. */
function withStood(open: Open, after: Answered): Answered {
  if (!after.ok) return after;
  const was = stoodBefore(open, open.desk.bench, after.value.desk.bench);
  return was === open.stoodBefore ? after : fine({ ...after.value, stoodBefore: was });
}

/** What the instruments show after an action is traced. */
function withTraces({ desk }: Open, after: Answered, isUndone: boolean): Answered {
  if (!after.ok) return after;
  const traces = traced(after.value.traces, desk.bench, after.value.desk.bench, isUndone);
  return traces === after.value.traces ? after : fine({ ...after.value, traces });
}

function answered(open: Open, action: BenchAction): Answered {
  switch (action.do) {
    case "make":
      return made(open, action.command, action.group ?? null);
    case "take-arranged":
      return made(open, (bench) => arrangeParts(bench, action.places), null);
    case "begin-drag":
      return fine({ ...open, desk: mark(open.desk) });
    case "keep-drag":
      return fine({ ...open, desk: keep(open.desk) });
    case "cancel-drag":
      return fine({ ...open, desk: cancel(open.desk) });
    case "undo":
      return withDesk({ ...open, held: [] }, undo(open.desk));
    case "redo":
      return withDesk({ ...open, held: [] }, redo(open.desk));
    case "throw":
    case "hold":
    case "let-go":
    case "pin":
      return thrown(open, action);
    case "play-scenes":
      return played(open, action.play, action.isAnew ?? false);
    case "ask":
      return asAsked(withQuestion(open, action.question));
    case "ask-next":
      return asAsked(withNext(open));
    case "reveal":
      return asAsked(withAsked(open, revealed));
    default:
      return fine(seen(open, action));
  }
}

/** The drawing as the question has it that is put to the class, also where it was thrown since. */
function asAsked(open: Open): Answered {
  const { asked } = open.lesson;
  if (!asked) return fine(open);
  return orAsItIs(
    open,
    made(open, (bench) => setUp(bench, asked.question.condition), null),
  );
}

/** Where the scenes are, and the drawing as the scene there has it. All of one playing is undone as one. */
function played(open: Open, play: Play, isAnew: boolean): Answered {
  const isThere = play.at === open.lesson.play.at && !isAnew;
  const next = { ...open, lesson: { ...open.lesson, play, ...(!isThere && { asked: null }) } };
  const scene = open.desk.bench.circuit.scenes[play.at];
  if (!scene || isThere) return fine(next);
  return orAsItIs(
    next,
    made(next, (bench) => setUp(bench, scene.condition), "scenes"),
  );
}

function fine(open: Open): Answered {
  return { ok: true, value: open };
}

function withDesk(open: Open, desk: Outcome<Desk>): Answered {
  return desk.ok ? fine(fitting({ ...open, desk: desk.value, editing: followed(open, desk.value) })) : desk;
}

/** The part in the editor, under the new designator where that was changed or taken back: it keeps its place in the list. */
function followed({ editing, desk: before }: Open, after: Desk): string | null {
  const [was, now] = [before.bench.circuit.parts, after.bench.circuit.parts];
  if (editing === null || was === now || now.some(({ id }) => id === editing)) return editing;
  const heir = was.length === now.length ? now[was.findIndex(({ id }) => id === editing)]?.id : undefined;
  return heir !== undefined && was.every(({ id }) => id !== heir) ? heir : null;
}

function made(open: Open, command: Command, group: string | null): Answered {
  const edit = command(open.desk.bench);
  return edit.ok ? withDesk(open, perform(open.desk, edit.value, group)) : edit;
}

/** What is shown and chosen must be there: an edit may have taken it away. */
function fitting(open: Open): Open {
  const { circuit } = open.desk.bench;
  const page = circuit.pages.some(({ id }) => id === open.page) ? open.page : (circuit.pages[0]?.id ?? "");
  const isThere = (thing: Thing | null): boolean => thing !== null && thingNamed(circuit, thing.id) !== null;
  const chosen = isThere(open.chosen) ? open.chosen : null;
  const hovered = isThere(open.hovered) ? open.hovered : null;
  const also = open.also.every(isThere) ? open.also : open.also.filter(isThere);
  const editing = circuit.parts.some(({ id }) => id === open.editing) ? open.editing : null;
  const tool = isInHand(open) ? open.tool : HAND;
  const adjusting = open.adjusting && underlayAt(circuit, open.adjusting.underlay) ? open.adjusting : null;
  const isAsBefore =
    adjusting === open.adjusting &&
    page === open.page &&
    chosen === open.chosen &&
    hovered === open.hovered &&
    also === open.also &&
    editing === open.editing &&
    tool === open.tool;
  return isAsBefore ? open : { ...open, page, chosen, hovered, also, editing, adjusting, tool };
}

/** Whether what is in hand still is: a lead is not once it is clipped on, nor when its instrument was put away. */
function isInHand({ tool, desk }: Open): boolean {
  if (tool.is !== "lead") return true;
  const each = desk.bench.clipped.find(({ id }) => id === tool.instrument);
  if (each === undefined) return false;
  const at = each.instrument === "clamp" ? each.around : tool.lead === "jaws" ? null : each[tool.lead];
  return at === null || at === tool.from;
}

// ---------------------------------------------------------------- controls

type Throw = Extract<BenchAction, { do: "throw" | "hold" | "let-go" | "pin" }>;

/** A hold and its letting go are one step: undone together, since a person made one gesture. */
function thrown(open: Open, action: Throw): Answered {
  const { control } = action;
  const others = open.held.filter((key) => key !== control);
  const gesture = action.do === "hold" ? open.gesture + 1 : open.gesture;
  const group = `hold ${control} ${gesture}`;
  switch (action.do) {
    case "pin":
      return fine({ ...open, held: others });
    case "let-go": {
      const free = { ...open, held: others };
      return orAsItIs(
        free,
        made(free, (bench) => letGo(bench, control), group),
      );
    }
    case "hold": {
      const held = { ...open, gesture, held: [...others, control], recent: lately(open, control) };
      if (positionNow(open.desk.bench, control) === action.position) return fine(held);
      return made(held, (bench) => throwControl(bench, control, action.position), group);
    }
    case "throw": {
      const free = { ...open, held: others, recent: lately(open, control) };
      return made(free, (bench) => throwControl(bench, control, action.position), null);
    }
  }
}

/** Where an edit has nothing to change, all else of the act holds: a finger lifted, the next scene of the same condition. */
function orAsItIs(open: Open, edited: Answered): Answered {
  return edited.ok || isToldOf(edited.refusal) ? edited : fine(open);
}

function lately({ recent }: Open, control: string): readonly string[] {
  return recent[0] === control ? recent : [control, ...recent.filter((key) => key !== control)].slice(0, MOST_RECENT);
}

// ---------------------------------------------------------------- what is in sight

type Sight = Exclude<
  BenchAction,
  | Throw
  | { do: "make" | "take-arranged" | "undo" | "redo" | "begin-drag" | "keep-drag" | "cancel-drag" }
  | { do: "play-scenes" | "ask" | "ask-next" | "reveal" }
>;

function seen(open: Open, action: Sight): Open {
  switch (action.do) {
    case "show-page":
      return { ...open, page: action.page, hovered: null, editing: null, adjusting: null };
    case "look-at":
      return { ...open, viewports: { ...open.viewports, [action.page]: action.viewport } };
    case "wish":
      return wishing(open, action.want);
    case "choose":
      return chose(open, action.thing);
    case "choose-also":
      return withAlso(open, action.thing);
    case "choose-all":
      return { ...open, chosen: action.things[0] ?? null, also: action.things.slice(1) };
    case "use-tool":
      return { ...open, tool: action.tool, ...(!isHand(action.tool) && { chosen: null, also: NONE }) };
    case "edit-part":
      return { ...open, editing: action.part };
    case "add":
      return open.isAdding === action.isAdding ? open : { ...open, isAdding: action.isAdding };
    case "adjust":
      return { ...open, adjusting: action.adjusting };
    case "hover":
      return isSame(open.hovered, action.thing) ? open : { ...open, hovered: action.thing };
    case "find":
      return found(open, action.thing);
    case "find-named": {
      const thing = thingNamed(open.desk.bench.circuit, action.id);
      return thing ? found(open, thing) : open;
    }
    case "show-printed":
      return shownPrinted(open, action.id);
    case "go-to-step": {
      const step = open.order.answer?.order.steps.find(({ number }) => number === action.step);
      const thing = step && readAt(open.desk.bench.circuit, step);
      return step && thing ? { ...found(open, thing), step: step.number } : open;
    }
    case "show-suspect":
      return suspected(open, action.id);
    case "with-suspect":
      return { ...open, isWithSuspect: action.isWith };
    case "show-changed":
      return { ...open, showsChanged: action.isOn };
    case "show-table":
      return { ...open, connector: action.connector };
    case "show-shares":
      return { ...open, place: action.place, panel: "shares" };
    case "hand":
      return withAsked(open, (predict) => raised(predict, action.choice));
    case "hand-back":
      return withAsked(open, takenBack);
    case "teach":
      return { ...open, lesson: { ...open.lesson, ...action.lesson } };
    case "begin-trace":
      return { ...open, traces: begunAnew(open.traces, open.desk.bench, action.instrument) };
    case "pass-time":
      return atTime(open, open.time.steps + 1);
    case "pass-to-next":
      return atTime(open, nextComing(open.desk.bench, open.time.steps) ?? open.time.steps);
    case "let-time-pass":
      return { ...open, time: { ...open.time, isPassing: action.isPassing } };
    case "seek-sneaks":
      return { ...open, isSeeking: true };
    case "set-jumper":
      return { ...open, jumper: { ...open.jumper, ...action.jumper } };
    case "cupboard":
      return { ...open, cupboard: reduceCupboard(open.cupboard, action.act, open.desk.bench.circuit) };
    case "open-panel":
      return { ...open, panel: action.panel };
  }
}

const NONE: readonly Thing[] = [];

/** One thing is chosen, or nothing; a pin is taken for the jumper whose end is being picked. */
function chose(open: Open, thing: Thing | null): Open {
  const { panel, also } = open;
  const jumper = panel === "shares" && thing?.is === "point" ? pickedFor(open.jumper, thing.id) : open.jumper;
  if (isSame(open.chosen, thing) && also.length === 0 && jumper === open.jumper) return open;
  return { ...open, chosen: thing, also: NONE, jumper };
}

/** One more chosen, or one fewer. */
function withAlso(open: Open, thing: Thing): Open {
  const { chosen, also } = open;
  if (!chosen) return { ...open, chosen: thing };
  const all = [chosen, ...also];
  const kept = all.filter((each) => !isSame(each, thing));
  const [first = null, ...rest] = kept.length < all.length ? kept : [...all, thing];
  return { ...open, chosen: first, also: rest };
}

/** The bench after so many steps of time. Nothing of it is undone. */
function atTime(open: Open, steps: number): Open {
  const bench = timePassed(open.desk.bench, steps);
  const desk = bench === open.desk.bench ? open.desk : { ...open.desk, bench };
  return { ...open, desk, time: { ...open.time, steps } };
}

function wishing(open: Open, want: NonNullable<Open["wish"]>["want"]): Open {
  return { ...open, wish: { want, count: (open.wish?.count ?? 0) + 1 } };
}

function found(open: Open, thing: Thing): Open {
  const page = pageOf(open.desk.bench.circuit, thing, open.page) ?? open.page;
  return wishing({ ...open, page, chosen: thing, also: NONE, editing: null }, { show: thing });
}

/** The row of a suspect is open, where it sits is in sight, and the wires are as they would be with it. */
function suspected(open: Open, id: string | null): Open {
  const suspect = open.order.answer?.order.suspects.find((each) => each.id === id);
  if (!suspect) return { ...open, suspect: null, isWithSuspect: false };
  const things = suspect.faults.map(({ target }) => thingNamed(open.desk.bench.circuit, target));
  const [thing] = things.filter((each) => each !== null);
  // Its own ring marks it: nothing is chosen beside it.
  return { ...(thing ? found(open, thing) : open), chosen: null, suspect: suspect.id, isWithSuspect: true };
}

function shownPrinted(open: Open, id: string): Open {
  const { circuit } = open.desk.bench;
  const thing = thingNamed(circuit, id);
  const { printed } =
    circuit.parts.find((part) => part.id === id) ?? circuit.wires.find((wire) => wire.id === id) ?? {};
  const spot = printed && printedSpot(circuit, printed);
  if (!thing || !spot) return open;
  const { x, y, page } = spot;
  return wishing({ ...open, page: page.id, chosen: thing, also: NONE, editing: null }, { spot: { x, y } });
}

function isSame(one: Thing | null, other: Thing | null): boolean {
  return one === other || (one !== null && other !== null && one.is === other.is && one.id === other.id);
}

/** Refusals that need no word: what was asked for is so already. */
const QUIET = ["already-so", "at-rest", "not-held", "nothing-to-undo", "nothing-to-redo"];

/** Whether a person must be told of a refusal. */
export function isToldOf({ code }: Refusal): boolean {
  return !QUIET.includes(code);
}
