import { useEffect, useRef } from "react";
import { useApp } from "../state/AppContext.tsx";
import { focusOpener } from "./focusOpener.ts";

/** The library is there at once as it was, and a moment later as it is now. */
const LISTS = 2;

/** Whoever comes back from a bench has the keys on what opened it: what had them there is gone. */
export function useReturning(): void {
  const circuits = useApp(({ shelf }) => shelf.circuits);
  const attempts = useApp((state) => state.attempts);
  const last = useApp(({ shelf }) => shelf.last);
  const isBack = useApp(({ brought, shelf }) => brought > 0 && shelf.isRead);
  const lists = useRef(new Set<unknown>());
  const exercises = useRef(new Set<unknown>());
  const given = useRef<Element | null>(null);
  useEffect(() => {
    if (!isBack || lists.current.add(circuits).size > LISTS || exercises.current.add(attempts).size > LISTS) return;
    const now = document.activeElement;
    if (now !== document.body && now !== given.current) return;
    focusOpener(last);
    given.current = document.activeElement;
  }, [isBack, circuits, attempts, last]);
}
