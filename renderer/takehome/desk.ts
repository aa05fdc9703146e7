import type { ControlKey } from "../../core/base/ids.ts";
import type { Outcome } from "../../core/base/outcome.ts";
import type { Circuit, Scene } from "../../core/circuit/circuit.ts";
import { springsBack } from "../../core/circuit/points.ts";
import type { Palette } from "../../core/drawing/ink.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { letGo } from "../../core/edit/commands/letGo.ts";
import { setUp } from "../../core/edit/commands/setUp.ts";
import { positionNow, throwControl } from "../../core/edit/commands/throwControl.ts";
import { apply, type Edit } from "../../core/edit/edit.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { changedBetween } from "../../core/lesson/changed.ts";
import { AT_START, type Play, passed, stepped } from "../../core/lesson/play.ts";
import { inFocus, secondsOf } from "../../core/lesson/scene.ts";
import { conditionText } from "../../core/live/condition.ts";
import type { Live } from "../../core/live/live.ts";
import { saidBetween } from "../words/said.ts";

/** All that a take-home page shows. */
export interface Desk {
  readonly bench: Bench;
  /** Id of the page that is shown. */
  readonly page: string;
  /** Live state before the last act, for what changed by it; null before any. */
  readonly before: Live | null;
  readonly play: Play;
  /** What the last act changed, in words. */
  readonly said: string;
  readonly showsChanged: boolean;
  /** Whether what flashes stands still. */
  readonly isStill: boolean;
  readonly palette: Extract<Palette, "light" | "dark">;
  /** Wire or part whose words are shown; null for none. */
  readonly asked: string | null;
}

/** What a person does to the circuit, as the commands of the bench have it. */
export type Command = (bench: Bench) => Outcome<Edit>;

/** A desk with this circuit as its first scene has it, or at rest. */
export function deskFor(circuit: Circuit, about: Pick<Desk, "palette" | "isStill">): Desk {
  const desk: Desk = {
    bench: benchFor(circuit),
    page: circuit.pages[0]?.id ?? "",
    before: null,
    play: AT_START,
    said: "",
    showsChanged: false,
    asked: null,
    ...about,
  };
  const [first] = circuit.scenes;
  return first ? { ...acted(desk, (bench) => setUp(bench, first.condition)), before: null, said: "" } : desk;
}

/** The desk after an act; the same where it is refused, as a throw to where a control stands. */
export function acted(desk: Desk, command: Command): Desk {
  const edit = command(desk.bench);
  const applied = edit.ok ? apply(desk.bench, edit.value) : edit;
  if (!edit.ok || !applied.ok) return desk;
  const { bench } = applied.value;
  return {
    ...desk,
    bench,
    before: liveNow(desk.bench).shown,
    said: saidBetween(desk.bench, bench, edit.value.name) ?? desk.said,
  };
}

/** After a press on a position: thrown there; what springs back and is held there already is let go. */
export function pressed(desk: Desk, control: ControlKey, position: string): Desk {
  const isHeld = positionNow(desk.bench, control) === position && springsBack(desk.bench.circuit, control, position);
  return acted(desk, (bench) => (isHeld ? letGo(bench, control) : throwControl(bench, control, position)));
}

// ---------------------------------------------------------------- scenes

/** Lengths of all scenes. */
export function lengthsOf({ bench }: Desk): readonly number[] {
  return bench.circuit.scenes.map(secondsOf);
}

/** The scene that is shown: the one reached last, while the circuit stands as it says; null once anything was thrown since. */
export function sceneShown({ bench, play }: Desk): Scene | null {
  const scene = bench.circuit.scenes[play.at];
  return scene && conditionText(scene.condition) === conditionText(bench.condition) ? scene : null;
}

/** Where the scenes stand now, and the circuit set up as the scene there says, if it is another one. */
export function playedTo(desk: Desk, play: Play): Desk {
  const scene = desk.bench.circuit.scenes[play.at];
  const isThere = play.at === desk.play.at && sceneShown(desk) !== null;
  if (!scene || isThere) return { ...desk, play };
  // A scene may stand as the one before it does, and only look elsewhere: then nothing changed.
  const set = acted({ ...desk, play, before: null, said: "" }, (bench) => setUp(bench, scene.condition));
  return turned({ ...set, said: `${scene.label}. ${set.said}`.trim() });
}

/** Turned to where the scene is to be seen: the page on which most changed, unless something did on the one that is shown. */
function turned(desk: Desk): Desk {
  const { circuit } = desk.bench;
  const counts = new Map<string, number>();
  for (const id of inFocusOrChanged(desk)) {
    const page = circuit.placement.parts[id]?.page;
    if (page !== undefined) counts.set(page, (counts.get(page) ?? 0) + 1);
  }
  const [first] = [...counts].toSorted(([, one], [, other]) => other - one);
  return first === undefined || counts.has(desk.page) ? desk : { ...desk, page: first[0], asked: null };
}

function inFocusOrChanged(desk: Desk): ReadonlySet<string> {
  const { bench, before } = desk;
  const scene = sceneShown(desk);
  const now = liveNow(bench).shown;
  const focus = scene && inFocus(bench.circuit, scene);
  return focus ?? (before ? changedBetween(before, now, bench.circuit.nominalVolts) : new Set());
}

/** At the scene of this place, from its beginning. */
export function atScene(desk: Desk, place: number): Desk {
  return playedTo(desk, stepped(desk.play, place - desk.play.at, lengthsOf(desk)));
}

/** So many seconds later. */
export function later(desk: Desk, seconds: number): Desk {
  const play = passed(desk.play, seconds, lengthsOf(desk));
  return play === desk.play ? desk : play.at === desk.play.at ? { ...desk, play } : playedTo(desk, play);
}
