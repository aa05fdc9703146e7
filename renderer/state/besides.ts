import { settingsShape } from "../../schemas/settings.ts";
import type { AppStore, Reaction } from "./store.ts";

/** The part of a broadcast channel that windows need: what one posts reaches all others of the program, not itself. */
export interface Besides {
  postMessage(settings: unknown): void;
  onmessage: ((event: MessageEvent<unknown>) => void) | null;
}

/** Tells windows beside this one of settings that are changed here, keys among them, at once. */
export function besidesReaction(besides: Besides): Reaction {
  return (action, { settings }) => {
    if (action.do === "set") besides.postMessage(settings);
  };
}

/** Takes settings over that are changed in a window beside this one; what another version of the program sends is left alone. */
export function heedBesides(besides: Besides, { dispatch, getState }: AppStore): void {
  besides.onmessage = ({ data }) => {
    const settings = settingsShape.safeParse(data);
    if (settings.success && getState().isStarted) dispatch({ do: "settled", settings: settings.data });
  };
}
