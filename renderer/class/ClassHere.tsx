import { useEffect, useMemo, useRef, useState } from "react";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { actionOf } from "./acts.ts";
import { ClassWall } from "./ClassWall.tsx";
import { type ClassRoom, classShown } from "./classShown.ts";

/** Before the wall is measured nothing is drawn for it. */
const NO_ROOM: ClassRoom = { width: 1, height: 1, screen: 1 };

/** What the class sees, over all of this window: for a machine with one screen. */
export function ClassHere() {
  const { dispatch, getState } = useAppStore();
  const state = useApp((each) => each);
  const { open, classroom, settings } = state;
  const [room, setRoom] = useState(NO_ROOM);
  const bench = open?.desk.bench;
  const shown = useMemo(
    () => classShown(room === NO_ROOM ? { ...state, classroom: { ...classroom, isBlank: true } } : state, room),
    // Only this of the state is on the wall.
    [bench, open?.page, open?.lesson, open?.recent, classroom, settings, room],
  );
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    dialog.current?.showModal();
    dialog.current?.focus();
    return () => {
      if (before instanceof HTMLElement) before.focus({ preventScroll: true });
    };
  }, []);
  useEffect(() => {
    // Escape leaves a browser's whole screen before the page hears of it.
    const look = (): void => {
      if (document.fullscreenElement === null) dispatch({ do: "close-class" });
    };
    document.addEventListener("fullscreenchange", look);
    return () => document.removeEventListener("fullscreenchange", look);
  }, [dispatch]);
  return (
    <dialog
      className="class-here"
      aria-label="Class view"
      tabIndex={-1}
      ref={dialog}
      onCancel={(event) => event.preventDefault()}
    >
      <ClassWall
        shown={shown}
        onRoom={setRoom}
        onAct={(act) => {
          const action = actionOf(act, getState());
          if (action) dispatch(action);
        }}
      />
    </dialog>
  );
}
