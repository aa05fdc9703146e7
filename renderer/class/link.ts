import { z } from "zod";
import { KEY_ROWS } from "../../core/edit/keys/rows.ts";
import type { AppState } from "../state/state.ts";
import type { AppStore, Reaction } from "../state/store.ts";
import { actionOf, type ClassAct } from "./acts.ts";
import { type ClassRoom, type ClassShown, classShown } from "./classShown.ts";

/** What the window of the instructor tells the class window. */
export type ToClass =
  /** What to show from now on. */
  | { readonly say: "show"; readonly shown: ClassShown }
  /** The instructor's page has begun anew, and asks who is there. */
  | { readonly say: "who" }
  /** The class view was left. */
  | { readonly say: "leave" };

const ACTS = KEY_ROWS.flatMap(({ id, place }) => (place === "class" && id !== "class-hand" ? [id] : []));
/** Most answers that a key can choose from. */
const MOST_CHOICES = 9;
const pixels = z.number().min(1).max(20_000);

/** What the class window tells: that it is there with so much room, that something is to be done, that it goes. */
export const fromClass = z.discriminatedUnion("say", [
  z.strictObject({ say: z.literal("here"), room: z.strictObject({ width: pixels, height: pixels, screen: pixels }) }),
  z.strictObject({
    say: z.literal("act"),
    asked: z.union([
      z.strictObject({ act: z.enum(ACTS) }),
      z.strictObject({ act: z.literal("class-throw"), control: z.string(), position: z.string() }),
      z.strictObject({
        act: z.literal("class-hand"),
        choice: z
          .int()
          .min(0)
          .max(MOST_CHOICES - 1),
      }),
    ]),
  }),
  z.strictObject({ say: z.literal("gone") }),
]);
export type FromClass =
  | { readonly say: "here"; readonly room: ClassRoom }
  | { readonly say: "act"; readonly asked: ClassAct }
  | { readonly say: "gone" };

/** The part of a broadcast channel that both windows need. */
export interface ClassChannel {
  postMessage(said: unknown): void;
  onmessage: ((event: MessageEvent<unknown>) => void) | null;
}

/** The instructor's end: what drives the class window, and what heeds it. */
export interface ClassLink {
  readonly reaction: Reaction;
  /** Begins to listen, and asks whether a class window is there already. */
  listen(store: AppStore): void;
}

/**
 * Drives a class window over a channel. What it shows is worked out here and sent as words and pictures; `soon` puts that
 * off until the instructor's own drawing is painted.
 */
export function linkToClass(channel: ClassChannel, soon: (run: () => void) => void): ClassLink {
  let room: ClassRoom | null = null;
  let last: readonly unknown[] = [];
  let isWaiting = false;
  const tell = (said: ToClass): void => channel.postMessage(said);

  const show = (state: AppState): void => {
    if (room === null) return;
    const now = [room, ...shownOf(state)];
    if (now.length === last.length && now.every((each, at) => each === last[at])) return;
    last = now;
    tell({ say: "show", shown: classShown(state, room) });
  };
  const reaction: Reaction = (_action, state, before, { getState }) => {
    if (before.classroom.where === "window" && state.classroom.where !== "window") {
      room = null;
      tell({ say: "leave" });
    }
    if (state.classroom.where !== "window" || isWaiting) return;
    isWaiting = true;
    soon(() => {
      isWaiting = false;
      show(getState());
    });
  };
  const hear = ({ getState, dispatch }: AppStore, said: FromClass): void => {
    switch (said.say) {
      case "here":
        room = said.room;
        last = [];
        dispatch({ do: "class", classroom: { where: "window" } });
        show(getState());
        break;
      case "act": {
        const action = actionOf(said.asked, getState());
        if (action) dispatch(action);
        break;
      }
      case "gone":
        room = null;
        dispatch({ do: "class", classroom: { where: null } });
    }
  };
  const listen = (store: AppStore): void => {
    channel.onmessage = ({ data }) => {
      const said = fromClass.safeParse(data);
      if (said.success) hear(store, said.data);
    };
    tell({ say: "who" });
  };
  return { reaction, listen };
}

/** All of the state that what is shown hangs on. */
function shownOf({ open, classroom, settings }: AppState): readonly unknown[] {
  const { classWords, look, motion, keys } = settings;
  return [open?.desk.bench, open?.page, open?.lesson, open?.recent, classroom, classWords, look, motion, keys];
}
