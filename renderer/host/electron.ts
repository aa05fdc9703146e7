import type { Outcome } from "../../core/base/outcome.ts";
import type { Answer, Argument, CallName } from "../../schemas/calls.ts";
import type { Host } from "./host.ts";

/** What the window's preload gives the page: one function for every call. */
export interface Bridge {
  call(name: string, argument: unknown): Promise<unknown>;
}

declare global {
  interface Window {
    /** There only in the program's own window. */
    readonly wirefathom?: Bridge;
  }
}

/** The host behind the program's own window. */
export function electronHost(bridge: Bridge): Host {
  const ask = async <N extends CallName>(name: N, argument: Argument<N>): Promise<Outcome<Answer<N>>> =>
    (await bridge.call(name, argument)) as Outcome<Answer<N>>;
  return { name: "electron", ask };
}
