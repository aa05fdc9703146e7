import type { Palette } from "../../core/drawing/ink.ts";
import type { Bench } from "../../core/edit/bench.ts";
import type { OwnKeys } from "../../core/edit/keys/ownKeys.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { darkMoment } from "../../core/lesson/flash.ts";
import { CLASS_WORDS } from "../../core/lesson/wall.ts";
import type { Live } from "../../core/live/live.ts";
import type { AppState } from "../state/state.ts";
import { conditionPhrase } from "../words/condition.ts";
import { type ClassKey, keyOf } from "./classKey.ts";
import { focusIds, pageOf } from "./focus.ts";
import { type Lesson, placeOfScene } from "./lesson.ts";
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
  /** The state of what is in focus. */
  readonly said: string;
  readonly key: readonly ClassKey[];
  readonly picture: Picture | null;
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
  const { bench } = open?.desk ?? {};
  const isShown = bench !== undefined && open !== null && !classroom.isBlank;
  return {
    theme,
    words,
    isStill: settings.motion === "still",
    keys: settings.keys,
    isBlank: classroom.isBlank,
    sheet: isShown
      ? sheetFor(bench, open.lesson, {
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

function sheetFor(bench: Bench, lesson: Lesson, how: How): ClassSheet {
  const { circuit, condition } = bench;
  const { scenes } = circuit;
  const at = placeOfScene(circuit, condition, lesson.play);
  const scene = scenes[at] ?? null;
  const focus = focusIds(circuit, lesson.focus, scene, condition);
  const page = pageOf(circuit, focus, how.page);
  const live = liveOfClass(bench, lesson);
  return {
    title: scene?.label ?? conditionPhrase(circuit, condition),
    place: scene ? `Scene ${at + 1} of ${scenes.length}` : "",
    caption: lesson.hasCaption ? (scene?.caption ?? "") : "",
    said: focusSaid(circuit, live, lesson.focus, focus),
    key: keyOf(circuit, page, live, focus, how.palette),
    picture: pictureOf({ ...how, circuit, page, live, dark: darkOf(bench, lesson, live), focus }),
  };
}

/** The live state as the class sees it. A wire that is open shows no break: that would be the fault itself. */
function liveOfClass(bench: Bench, { showsFaults }: Lesson): Live {
  const { good, now } = liveNow(bench);
  if (!showsFaults) return good;
  const wires = [...now.wires].map(([id, wire]) => [id, { ...wire, isBroken: false }] as const);
  return { ...now, wires: new Map(wires) };
}

function darkOf(bench: Bench, { showsFaults }: Lesson, live: Live): Live | null {
  const { after } = liveNow(bench);
  const standing = { condition: bench.condition, states: showsFaults ? after.now : after.good };
  return darkMoment(wiringOf(bench.circuit), live, standing, showsFaults ? bench.faults : []);
}
