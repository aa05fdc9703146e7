import { createStore, type StoreApi } from "zustand/vanilla";
import { FIRST_SETTINGS } from "../../schemas/settings.ts";
import { EMPTY_CLASSROOM } from "../class/lesson.ts";
import { CLEAR_DESK } from "../instructor/handins.ts";
import { NO_ATTEMPTS } from "../learner/learning.ts";
import type { Action } from "./action.ts";
import { reduce } from "./reduce.ts";
import { EMPTY_SHELF } from "./shelf.ts";
import type { AppState, Theme } from "./state.ts";

/** What reacts to an action once the state has changed: errands to the host, questions to the worker. */
export type Reaction = (action: Action, state: AppState, before: AppState, store: AppStore) => void;

/** The window's one store. `dispatch` is the only writer. */
export interface AppStore extends Pick<StoreApi<AppState>, "getState" | "getInitialState" | "subscribe"> {
  dispatch(action: Action): void;
}

/** A store in which nothing is open yet. Reactions run in order after every action. */
export function createAppStore(systemTheme: Theme = "light", reactions: readonly Reaction[] = []): AppStore {
  const { getState, getInitialState, subscribe, setState } = createStore<AppState>(() => firstState(systemTheme));
  const store: AppStore = {
    getState,
    getInitialState,
    subscribe,
    dispatch(action) {
      const before = getState();
      const after = reduce(before, action);
      if (after !== before) setState(after, true);
      for (const react of reactions) react(action, after, before, store);
    },
  };
  return store;
}

function firstState(systemTheme: Theme): AppState {
  return {
    isStarted: false,
    open: null,
    learning: null,
    attempts: NO_ATTEMPTS,
    handins: CLEAR_DESK,
    brought: 0,
    shelf: EMPTY_SHELF,
    settings: FIRST_SETTINGS,
    systemTheme,
    theme: systemTheme,
    isFinding: false,
    isPrinting: false,
    isExporting: false,
    bringing: null,
    isShowingKeys: false,
    help: null,
    about: null,
    report: null,
    isShowingReport: false,
    classroom: EMPTY_CLASSROOM,
    arranging: null,
    notices: [],
    said: "",
  };
}
