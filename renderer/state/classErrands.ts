import type { Going } from "./going.ts";

/** What a browser keeps from opening, and what to do about it. */
const FORBIDDEN = {
  title: "No class window.",
  words: "The browser did not let it open. Allow this page its own windows, then ask for it again.",
  isError: true,
} as const;

/** Shows the class view where it can be shown, by the host or, where that has no windows, by the page. */
export async function classOpened({ host, page, store }: Going, where: "any" | "window" | "here"): Promise<void> {
  if (store.getState().open === null) return;
  // A browser opens windows and fills screens only at once after a press: there is no time to ask.
  const shown = host.name === "electron" ? await shownByHost(host, page.classId, where) : page.openClass(where);
  if (shown === "forbidden") return store.dispatch({ do: "tell", notice: FORBIDDEN });
  // A class window says itself when it is there.
  if (shown === "here") store.dispatch({ do: "class", classroom: { where: "here", isBlank: false } });
}

async function shownByHost(
  host: Going["host"],
  id: string,
  where: "any" | "window" | "here",
): Promise<"window" | "here" | "forbidden"> {
  const answer = await host.ask("class.open", { id, where });
  return answer.ok && answer.value.shown === "window" ? "window" : "here";
}

/** Takes the class view away, wherever it is. */
export async function classClosed({ host, page }: Going): Promise<void> {
  if (host.name === "electron") await host.ask("class.close", {});
  else page.closeClass();
}
