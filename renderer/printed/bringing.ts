import type { Refusal } from "../../core/base/outcome.ts";
import { addPage } from "../../core/edit/commands/addPage.ts";
import { addUnderlay } from "../../core/edit/commands/addUnderlay.ts";
import type { Command } from "../state/action.ts";
import { benchOf } from "../state/state.ts";
import type { AppStore } from "../state/store.ts";
import type { Pictures } from "./pictures.ts";
import { type Source, titleOf } from "./source.ts";

/** A page of a file that a person has chosen. */
export interface ChosenPage {
  readonly source: Source;
  readonly page: number;
}

/** Whether all chosen pages go under the page in sight, or each under a page of its own that is added for it. */
export type Where = "here" | "new";

/** Something that was not brought in, or that must be told of what was. */
export interface Told {
  readonly title: string;
  readonly refusal: Refusal;
}

interface Going {
  readonly store: AppStore;
  readonly pictures: Pictures;
  readonly where: Where;
  /** Ends it after the page that is under way; what was brought in stays. */
  readonly gone: AbortSignal;
  /** Told before each page, how many are done. */
  readonly progress: (done: number) => void;
}

let brought = 0;

/**
 * Brings chosen pages in, one after another, as one step to undo. What cannot be is told and the others go on; the page of the
 * circuit that the first one lies under is shown whole in the end.
 */
export async function bringPages(chosen: readonly ChosenPage[], going: Going): Promise<readonly Told[]> {
  const { store, pictures, gone, progress } = going;
  const told: Told[] = [];
  const group = `bring pages ${++brought}`;
  let shown: string | null = null;
  for (const [index, { source, page }] of chosen.entries()) {
    progress(index);
    const title = titleOf(source, page);
    const pictured = await source.picture(page, gone).catch((error: unknown) => {
      if (gone.aborted) return null;
      throw error;
    });
    if (!pictured || gone.aborted) break;
    const put = pictured.ok ? await pictures.put(pictured.value.bytes) : pictured;
    if (!put.ok) {
      told.push({ title, refusal: put.refusal });
      continue;
    }
    if (pictured.ok && pictured.value.note) told.push({ title, refusal: pictured.value.note });
    const under =
      going.where === "here" ? (store.getState().open?.page ?? "") : await pageFor(store, source, page, group);
    if (under === null) continue;
    make(store, (bench) => addUnderlay(bench, under, { title, image: put.value }), group);
    shown ??= under;
  }
  if (shown !== null) {
    if (shown !== store.getState().open?.page) store.dispatch({ do: "show-page", page: shown });
    store.dispatch({ do: "wish", want: { zoom: "fit" } });
  }
  return told;
}

/** Adds a page as large as the printed one, or as the page in sight where that does not say how large it is. */
async function pageFor(store: AppStore, source: Source, page: number, group: string): Promise<string | null> {
  const { open } = store.getState();
  const inSight = open?.desk.bench.circuit.pages.find(({ id }) => id === open.page);
  const size = await source.sizeOf(page).catch(() => null);
  const [widthMm, heightMm] = size?.map(Math.round) ?? [inSight?.widthMm ?? 297, inSight?.heightMm ?? 210];
  const before = pagesOf(store).length;
  make(
    store,
    (bench) => addPage(bench, { title: titleOf(source, page), widthMm: widthMm!, heightMm: heightMm! }),
    group,
  );
  const pages = pagesOf(store);
  return pages.length > before ? (pages.at(-1)?.id ?? null) : null;
}

function pagesOf({ getState }: AppStore) {
  return benchOf(getState())?.circuit.pages ?? [];
}

function make({ dispatch }: AppStore, command: Command, group: string): void {
  dispatch({ do: "make", command, group });
}
