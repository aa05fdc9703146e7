import type { PointId } from "../../core/base/ids.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { partOfPoint } from "../../core/circuit/points.ts";
import type { Palette } from "../../core/drawing/ink.ts";
import type { Bench } from "../../core/edit/bench.ts";
import type { OwnKeys } from "../../core/edit/keys/ownKeys.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { coveredUp } from "../../core/lesson/cover.ts";
import { darkMoment } from "../../core/lesson/flash.ts";
import type { Predict } from "../../core/lesson/predict.ts";
import { CLASS_WORDS } from "../../core/lesson/wall.ts";
import type { Live } from "../../core/live/live.ts";
import { pageOfPoint } from "../state/places.ts";
import type { AppState, Open } from "../state/state.ts";
import { conditionPhrase } from "../words/condition.ts";
import { type ClassControl, controlsFor } from "./classControls.ts";
import { type ClassKey, keyOf } from "./classKey.ts";
import { type ClassQuestion, classQuestion } from "./classQuestion.ts";
import { focusIds, type Ids, pageOf } from "./focus.ts";
import { isCoveredNow, type Lesson, placeOfScene } from "./lesson.ts";
import { type Picture, pictureOf } from "./picture.ts";
import { focusSaid } from "./said.ts";

/** What a screen has room for, in its pixels. */
export interface ClassRoom {
  /** Of the drawing. */
  readonly width: number;
  readonly height: number;
  /** Height of the whole screen, by which words are measured. */
  readonly screen: number;
}

/** What is on the wall: all of it in words and pictures, so that the window of the class knows nothing else. */
export interface ClassSheet {
  readonly title: string;
  /** "Scene 4 of 6"; empty while the drawing stands as no scene says. */
  readonly place: string;
  readonly caption: string;
  /** Whether the states are covered up: the class is to say them first. */
  readonly isCovered: boolean;
  /** The state of what is in focus. */
  readonly said: string;
  readonly key: readonly ClassKey[];
  readonly picture: Picture | null;
  /** What of the focus can be thrown on the wall, and whether there are scenes to step through. */
  readonly controls: readonly ClassControl[];
  readonly hasScenes: boolean;
  /** What the class is asked; null for nothing. */
  readonly question: ClassQuestion | null;
}

/** All that the class sees, and how. */
export interface ClassShown {
  readonly theme: Exclude<Palette, "black">;
  /** Height of words, px on a screen of 1080 lines. */
  readonly words: number;
  /** Whether what flashes stands still by the person's own wish. */
  readonly isStill: boolean;
  readonly keys: OwnKeys;
  /** Null while the screen is blank, or nothing is open. */
  readonly sheet: ClassSheet | null;
  readonly isBlank: boolean;
}

/** What the class sees in a state of the instructor's window. Of faults it has what they do at most, never what they are. */
export function classShown({ open, classroom, settings }: AppState, room: ClassRoom): ClassShown {
  const theme = classroom.isDark ? "dark" : "light";
  const words = settings.classWords;
  return {
    theme,
    words,
    isStill: settings.motion === "still",
    keys: settings.keys,
    isBlank: classroom.isBlank,
    sheet:
      open && !classroom.isBlank
        ? sheetFor(open, {
            page: open.page,
            palette: theme,
            look: settings.look,
            width: room.width,
            height: room.height,
            words: (words * room.screen) / CLASS_WORDS.lines,
          })
        : null,
  };
}

type How = Pick<Parameters<typeof pictureOf>[0], "page" | "palette" | "look" | "width" | "height" | "words">;

function sheetFor({ desk: { bench }, lesson, recent }: Open, how: How): ClassSheet {
  const { circuit, condition } = bench;
  const { scenes } = circuit;
  const { asked } = lesson;
  const at = placeOfScene(circuit, condition, lesson.play);
  const scene = scenes[at] ?? null;
  const isCovered = isCoveredNow(lesson);
  const focus = focusWith(circuit, focusIds(circuit, lesson.focus, scene, condition), asked);
  const page = pageOf(circuit, focus, asked ? pageAsked(circuit, asked, how.page) : how.page);
  const live = liveOfClass(bench, lesson);
  const shown = isCovered ? coveredUp(circuit, live) : live;
  const dark = isCovered ? null : darkOf(bench, lesson, live);
  const common = {
    isCovered,
    picture: pictureOf({ ...how, circuit, page, live: shown, dark, focus, marked: asked ? pointsAsked(asked) : [] }),
    controls: controlsFor(bench, focus, recent),
    hasScenes: scenes.length > 0,
    question: asked && classQuestion(asked),
  };
  // What a scene is called, and what its caption says, may tell what is covered up.
  if (isCovered)
    return {
      title: asked?.question.text ?? conditionPhrase(circuit, condition),
      place: "",
      caption: "",
      said: "",
      key: [],
      ...common,
    };
  return {
    title: asked?.question.text ?? scene?.label ?? conditionPhrase(circuit, condition),
    place: scene && !asked ? `Scene ${at + 1} of ${scenes.length}` : "",
    caption: lesson.hasCaption && !asked ? (scene?.caption ?? "") : "",
    said: asked ? "" : focusSaid(circuit, live, lesson.focus, focus),
    key: keyOf(circuit, page, live, focus, how.palette),
    ...common,
  };
}

/** What is in focus, or all where what is asked about is not. */
function focusWith(circuit: Circuit, focus: Ids | null, asked: Predict | null): Ids | null {
  const parts = asked ? pointsAsked(asked).map((point) => partOfPoint(circuit, point)?.part.id ?? "") : [];
  return focus && parts.every((id) => focus.has(id)) ? focus : null;
}

function pageAsked(circuit: Circuit, asked: Predict, shown: string): string {
  return pageOfPoint(circuit, pointsAsked(asked)[0]!) ?? shown;
}

/** The point that a question is about, and that of the black lead where it is on one. */
function pointsAsked({ question: { asked } }: Predict): readonly PointId[] {
  const isOnPoint = asked.asks === "volts" && asked.black !== "battery -" && asked.black !== "battery +";
  return isOnPoint ? [asked.point, asked.black] : [asked.point];
}

/** The live state of the class. A wire that is open shows no break: that would be the fault itself. */
function liveOfClass(bench: Bench, { showsFaults, asked }: Lesson): Live {
  const { good, now } = liveNow(bench);
  // Questions are asked of the circuit with nothing wrong.
  if (!showsFaults || asked) return good;
  const wires = [...now.wires].map(([id, wire]) => [id, { ...wire, isBroken: false }] as const);
  return { ...now, wires: new Map(wires) };
}

function darkOf(bench: Bench, lesson: Lesson, live: Live): Live | null {
  const showsFaults = lesson.showsFaults && !lesson.asked;
  const { after } = liveNow(bench);
  const standing = { condition: bench.condition, states: showsFaults ? after.now : after.good };
  return darkMoment(wiringOf(bench.circuit), live, standing, showsFaults ? bench.faults : []);
}
