import { useEffect, useRef, useState } from "react";
import { CLASS_WORDS } from "../../core/lesson/wall.ts";
import { type ClassAct, classActFor } from "./acts.ts";
import { ClassWall } from "./ClassWall.tsx";
import type { ClassRoom, ClassShown } from "./classShown.ts";
import type { ClassChannel, FromClass, ToClass } from "./link.ts";

interface Given {
  readonly channel: ClassChannel;
  /** Runs once the instructor's window is gone, however it went; gives what ends the watch. */
  readonly whenGone: (run: () => void) => () => void;
}

/** The wall before anything was heard. */
const EMPTY: ClassShown = {
  theme: "light",
  words: CLASS_WORDS.least,
  isStill: false,
  keys: {},
  sheet: null,
  isBlank: false,
};

/** The whole page of a class window: it shows what it is told, and passes on what is pressed. */
export function ClassPage({ channel, whenGone }: Given) {
  const [shown, setShown] = useState<ClassShown | null>(null);
  const [isAlone, setIsAlone] = useState(false);
  const room = useRef<ClassRoom | null>(null);
  const keys = shown?.keys ?? EMPTY.keys;
  useEffect(() => {
    const tell = (said: FromClass): void => channel.postMessage(said);
    channel.onmessage = ({ data }) => {
      const said = data as ToClass;
      if (said.say === "leave") window.close();
      else if (said.say === "who") {
        if (room.current) tell({ say: "here", room: room.current });
      } else {
        setIsAlone(false);
        setShown(said.shown);
      }
    };
    const go = (): void => tell({ say: "gone" });
    window.addEventListener("pagehide", go);
    return () => window.removeEventListener("pagehide", go);
  }, [channel]);
  const isHeard = shown !== null && !isAlone;
  useEffect(() => (isHeard ? whenGone(() => setIsAlone(true)) : undefined), [isHeard, whenGone]);
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      const act = classActFor(event, keys);
      const isOfButton = [" ", "Enter"].includes(event.key) && event.target instanceof HTMLButtonElement;
      if (!act || isOfButton) return;
      event.preventDefault();
      done(act, channel);
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, [keys, channel]);
  return (
    <>
      <ClassWall
        shown={isAlone || !shown ? EMPTY : shown}
        onRoom={(now) => {
          room.current = now;
          channel.postMessage({ say: "here", room: now } satisfies FromClass);
        }}
        onAct={(act) => done(act, channel)}
      />
      {isAlone && (
        <p className="wall-alone" role="alert">
          The instructor's window was closed. Nothing is shown here until it is open again.
        </p>
      )}
      <FullScreen />
    </>
  );
}

/** Leaving closes this window, heard or not. */
function done(asked: ClassAct, channel: ClassChannel): void {
  channel.postMessage({ say: "act", asked } satisfies FromClass);
  if (asked.act === "class-leave") window.close();
}

/** Fills the screen with this window; it stands there only while the window does not fill it. */
function FullScreen() {
  const [isFull, setIsFull] = useState(() => fillsScreen());
  useEffect(() => {
    const look = (): void => setIsFull(fillsScreen());
    window.addEventListener("resize", look);
    document.addEventListener("fullscreenchange", look);
    return () => {
      window.removeEventListener("resize", look);
      document.removeEventListener("fullscreenchange", look);
    };
  }, []);
  if (isFull) return null;
  return (
    <button
      type="button"
      className="button wall-full"
      onClick={() => void document.documentElement.requestFullscreen().catch(() => {})}
    >
      Fill this screen
    </button>
  );
}

function fillsScreen(): boolean {
  return document.fullscreenElement !== null || window.innerHeight >= window.screen.height;
}
