import type { Refusal } from "../../core/base/outcome.ts";
import type { MenuCommand } from "../../schemas/calls/window.ts";
import type { Report } from "../reports.ts";

/** Something that comes from outside the page while it runs: a file to open, an entry of the window's menu, what must be told, a fault. */
export type Incoming =
  | { readonly file: string }
  | { readonly menu: MenuCommand }
  | { readonly tell: Refusal }
  | { readonly report: Report };

/** Holds what comes from outside until a page asks for it. */
export interface Requests {
  /** A file for the page that starts next. A later one takes its place. */
  setStartFile(path: string): void;
  takeStartFile(): string | null;
  /** Something for a page that runs: the one that asked last gets it, at once or when it asks. */
  add(incoming: Incoming): void;
  /** The next thing, waiting for it so many milliseconds at most; null where none came, or where the page has gone. */
  next(waitMs: number, gone?: AbortSignal): Promise<Incoming | null>;
}

/** Requests with nothing in them yet. */
export function noRequests(): Requests {
  let startFile: string | null = null;
  let waiting: readonly Incoming[] = [];
  let pages: readonly ((incoming: Incoming) => void)[] = [];

  return {
    setStartFile: (path) => {
      startFile = path;
    },
    takeStartFile: () => {
      const path = startFile;
      startFile = null;
      return path;
    },
    add: (incoming) => {
      const page = pages.at(-1);
      if (page) page(incoming);
      else waiting = [...waiting, incoming];
    },
    next: (waitMs, gone) => {
      const [first, ...rest] = waiting;
      if (first && !gone?.aborted) {
        waiting = rest;
        return Promise.resolve(first);
      }
      return new Promise((resolve) => {
        const end = (incoming: Incoming | null): void => {
          clearTimeout(timer);
          gone?.removeEventListener("abort", leave);
          pages = pages.filter((page) => page !== end);
          resolve(incoming);
        };
        const leave = (): void => end(null);
        const timer = setTimeout(leave, waitMs);
        gone?.addEventListener("abort", leave);
        pages = [...pages, end];
        if (gone?.aborted) leave();
      });
    },
  };
}
