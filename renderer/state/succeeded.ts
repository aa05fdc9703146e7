import type { AppState, Notice } from "./state.ts";

/** The state once something of a kind has succeeded: errors of that kind are out of date. The same state where none is told. */
export function succeeded(state: AppState, kind: Notice["kind"]): AppState {
  const isPast = (notice: Notice): boolean => kind !== undefined && notice.isError && notice.kind === kind;
  return state.notices.some(isPast) ? { ...state, notices: state.notices.filter((each) => !isPast(each)) } : state;
}
