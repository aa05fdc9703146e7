import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";

/** Something that is opened when it is first asked for, and kept. */
export interface KeptOpen<T> {
  /** What is open; after a refusal the next asking tries again. Refuses `store-closed` once it has ended. */
  get(): Promise<Outcome<T>>;
  /** Keeps another in its place. */
  put(other: T): void;
  /** Ends it for good; gives what is to be closed, or null where nothing is open. */
  end(): Promise<T | null>;
}

/** Keeps what this opens, once however many ask at once. */
export function keptOpen<T>(open: () => Promise<Outcome<T>>): KeptOpen<T> {
  let hasEnded = false;
  let opening: Promise<Outcome<T>> | null = null;
  return {
    get: async () => {
      if (hasEnded) return refuse("store-closed");
      opening ??= open();
      const asked = opening;
      let isOpen = false;
      try {
        const opened = await asked;
        isOpen = opened.ok;
        return opened;
      } finally {
        if (!isOpen && opening === asked) opening = null;
      }
    },
    put: (other) => {
      opening = Promise.resolve(ok(other));
    },
    end: async () => {
      hasEnded = true;
      const opened = await opening;
      opening = null;
      return opened?.ok ? opened.value : null;
    },
  };
}
