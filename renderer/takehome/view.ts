import type { StoreApi } from "zustand/vanilla";
import type { Desk } from "./desk.ts";

/** What holds the desk: told a new one, it shows it. */
export type DeskStore = StoreApi<Desk>;

/** A piece of a page: its element, and what it does with each new value. */
export interface Piece<T> {
  readonly element: HTMLElement;
  show(value: T): void;
}

/** A piece of the page of a circuit. */
export type View = Piece<Desk>;

/** Fills a box anew; whoever had the keys on something in it has them on the same again, or on the box where that is gone. */
export function refill(box: HTMLElement, ...children: readonly HTMLElement[]): void {
  const held = document.activeElement;
  const was = held && box.contains(held) ? held.textContent : null;
  box.replaceChildren(...children);
  if (was === null) return;
  const again = [...box.querySelectorAll<HTMLElement>("button, summary")].find(
    ({ textContent }) => textContent === was,
  );
  (again ?? box).focus();
}

/** A value that is worked out anew only when one of the things it hangs on is another. */
export function onChange<T extends readonly unknown[]>(act: (...on: T) => void): (...on: T) => void {
  let last: T | null = null;
  return (...on) => {
    if (last?.every((value, at) => Object.is(value, on[at]))) return;
    last = on;
    act(...on);
  };
}
