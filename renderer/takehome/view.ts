import type { StoreApi } from "zustand/vanilla";
import type { Desk } from "./desk.ts";

/** What holds the desk: told a new one, it shows it. */
export type DeskStore = StoreApi<Desk>;

/** A piece of the page: its element, and what it does with each new desk. */
export interface View {
  readonly element: HTMLElement;
  show(desk: Desk): void;
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
