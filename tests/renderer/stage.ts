import { vi } from "vitest";
import type { Outcome } from "../../core/base/outcome.ts";
import { refuse } from "../../core/base/outcome.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Host } from "../../renderer/host/host.ts";
import { memoryHost } from "../../renderer/host/memory.ts";
import type { Action } from "../../renderer/state/action.ts";
import { autosave } from "../../renderer/state/autosave.ts";
import { errandsReaction } from "../../renderer/state/errands.ts";
import { reduce } from "../../renderer/state/reduce.ts";
import type { AppState, Open } from "../../renderer/state/state.ts";
import { type AppStore, createAppStore } from "../../renderer/state/store.ts";
import type { Answer, Argument, CallName } from "../../schemas/calls.ts";
import { VENTS } from "../edit/given.ts";

/** A host whose calls are seen, and can be made to be refused, to fail or to wait. */
export interface Watched {
  readonly host: Host;
  readonly calls: { readonly name: CallName; readonly argument: unknown }[];
  /** What was sent with every call of a name. */
  sent<N extends CallName>(name: N): readonly Argument<N>[];
  /** From now on a call is refused with a code; null lets it through again. */
  refuse(name: CallName, code: string | null): void;
  /** From now on every call fails, or none does. */
  fail(fails: boolean): void;
  /** Holds the next call of a name back, before it reaches the host, until it is let go. */
  hold(name: CallName): () => void;
}

/** The host that forgets, watched. */
export function watched(host: Host = memoryHost(new Map([["vents", VENTS]]), () => "2026-01-01T00:00:00Z")): Watched {
  const calls: { name: CallName; argument: unknown }[] = [];
  const refused = new Map<CallName, string>();
  const held = new Map<CallName, Promise<void>>();
  let isGone = false;
  const ask = async <N extends CallName>(name: N, argument: Argument<N>): Promise<Outcome<Answer<N>>> => {
    calls.push({ name, argument });
    const wait = held.get(name);
    held.delete(name);
    await wait;
    if (isGone) throw new Error("gone");
    const code = refused.get(name);
    return code === undefined ? host.ask(name, argument) : refuse(code);
  };
  return {
    host: { name: host.name, ask },
    calls,
    sent: <N extends CallName>(wanted: N) =>
      calls.flatMap(({ name, argument }) => (name === wanted ? [argument as Argument<N>] : [])),
    refuse: (name, code) => {
      if (code === null) refused.delete(name);
      else refused.set(name, code);
    },
    fail: (fails) => {
      isGone = fails;
    },
    hold: (name) => {
      const { promise, resolve } = Promise.withResolvers<void>();
      held.set(name, promise);
      return resolve;
    },
  };
}

/** A page with its store, a watched host, and what it handed to the browser. Fake timers must be on. */
export function pageOn(seen: Watched = watched()) {
  const downloads: { readonly name: string; readonly content: string; readonly encoding: string }[] = [];
  const chosen = { count: 0 };
  const saving = autosave(seen.host, (run, ms) => {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  });
  const page = {
    classId: "this-one",
    openClass: () => "window" as const,
    closeClass: () => {},
    chooseFile: () => {
      chosen.count += 1;
    },
    download: (name: string, content: string, encoding: "text" | "base64") => {
      downloads.push({ name, content, encoding });
    },
  };
  const store = createAppStore("light", [saving.reaction, errandsReaction(seen.host, page, saving)]);
  return { ...seen, store, saving, downloads, chosen };
}

/** A page with the roof vents, stored, on the bench; its calls are counted from here. Fake timers must be on. */
export async function pageWithVents() {
  const page = pageOn();
  const made = await page.host.ask("circuits.create", { circuit: VENTS });
  if (!made.ok) throw new Error(made.refusal.code);
  const { id } = made.value;
  page.store.dispatch({ do: "open-circuit", id });
  await vi.advanceTimersByTimeAsync(0);
  page.calls.length = 0;
  return { ...page, id };
}

/** The open bench, which must be there. */
export function openIn(from: AppState | AppStore): Open {
  const state = "getState" in from ? from.getState() : from;
  if (!state.open) throw new Error("nothing is open");
  return state.open;
}

/** A state in which a circuit is open as the library had it, after some actions. */
export function stateAfter(circuit: Circuit, ...actions: readonly Action[]): AppState {
  const opened = { id: "c1", version: 1, circuit, bench: null, benchVersion: 0, known: false };
  return [{ do: "opened", opened } as const, ...actions].reduce(reduce, createAppStore().getState());
}

/** The bench of such a state. */
export function openAfter(circuit: Circuit, ...actions: readonly Action[]): Open {
  return openIn(stateAfter(circuit, ...actions));
}
