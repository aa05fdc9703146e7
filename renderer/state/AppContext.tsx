import { createContext, type ReactNode, useContext } from "react";
import { useStore } from "zustand";
import type { AppState } from "./state.ts";
import type { AppStore } from "./store.ts";

const Context = createContext<AppStore | null>(null);

/** Gives the store to everything inside it. */
export function AppProvider({ store, children }: { readonly store: AppStore; readonly children: ReactNode }) {
  return <Context value={store}>{children}</Context>;
}

/** The store itself, for dispatch and for readers that must not render. */
export function useAppStore(): AppStore {
  const store = useContext(Context);
  if (!store) throw new Error("broken invariant: no store around this component");
  return store;
}

/** A value of the state; the component renders when it changes identity. Return only what the state already holds. */
export function useApp<T>(select: (state: AppState) => T): T {
  return useStore(useAppStore(), select);
}
