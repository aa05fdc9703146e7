import { sentence } from "../../core/base/words.ts";
import { type ArrangeWhat, type Attempt, partsToArrange } from "../../core/edit/arranging.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { arrangeParts } from "../../core/edit/commands/arrangeParts.ts";
import { arranged, type Drafting } from "../arrange/arrange.ts";
import { comparedText } from "../words/arrange.ts";
import type { AppState, Notice, Open } from "./state.ts";
import type { AppStore, Reaction } from "./store.ts";

/** An arrangement under way: the bench it began from, and what does the work. */
interface Going {
  readonly bench: number;
  readonly from: Bench;
  readonly drafting: Drafting;
}

/**
 * Lays out what a person asks for, off the window's thread. Whoever changes the drawing meanwhile, or leaves it, has the
 * arrangement given up; what a notice offers on it goes once the drawing is another.
 */
export function arrangingReaction(start: () => Drafting): Reaction {
  let going: Going | null = null;
  const stop = (store: AppStore): void => {
    going?.drafting.end();
    going = null;
    if (store.getState().arranging) store.dispatch({ do: "arranging", attempt: null });
  };
  return (action, state, before, store) => {
    const { open } = state;
    if (going && (open?.number !== going.bench || open.desk.bench.circuit !== going.from.circuit)) {
      stop(store);
      if (open) store.dispatch({ do: "tell", notice: CHANGED });
    }
    if (open?.desk.bench.circuit !== before.open?.desk.bench.circuit) offersGone(state, before, store);
    if (action.do === "cancel-arrange") stop(store);
    if (action.do !== "arrange" || !open || going) return;
    const asked = askedOf(open, action.what);
    if (!asked.ok) {
      store.dispatch({ do: "tell", notice: told("Not arranged.", sentence(asked.refusal), true) });
      return;
    }
    const mine: Going = { bench: open.number, from: open.desk.bench, drafting: start() };
    going = mine;
    const isGoing = (): boolean => going === mine;
    const begun = { bench: mine.from, page: open.page, parts: asked.value };
    const tellAttempt = (attempt: number): void => {
      if (isGoing()) store.dispatch({ do: "arranging", attempt });
    };
    const end = (tell: () => void): void => {
      if (!isGoing()) return;
      stop(store);
      tell();
    };
    arranged(mine.drafting, begun, tellAttempt).then(
      (attempt) => end(() => finish(attempt, store)),
      (error: unknown) => end(() => store.dispatch({ do: "tell", notice: erred(error) })),
    );
  };
}

function told(title: string, words: string, isError: boolean) {
  return { title, words, isError };
}

const CHANGED = told("Not arranged.", "The drawing was changed while it was worked out.", false);

function askedOf({ desk, page, chosen, also }: Open, what: ArrangeWhat) {
  const ids = [...(chosen ? [chosen] : []), ...also].flatMap(({ is, id }) => (is === "part" ? [id] : []));
  return partsToArrange(desk.bench.circuit, page, what, ids);
}

/** An offer to undo, or to take an arrangement, holds only for the drawing it was made on. */
function offersGone({ notices }: AppState, before: AppState, store: AppStore): void {
  for (const { id, offers = [] } of notices) {
    const isOfDrawing = offers.some(({ action }) => action.do === "undo" || action.do === "take-arranged");
    if (isOfDrawing && before.notices.some((each) => each.id === id)) store.dispatch({ do: "put-away", notice: id });
  }
}

function erred(error: unknown) {
  return told("Not arranged: the program itself erred.", error instanceof Error ? error.message : String(error), true);
}

/** Takes what is better; of what is not tells the figures and leaves the choice. */
function finish(attempt: Attempt | null, store: AppStore): void {
  const tell = (notice: Omit<Notice, "id">): void => store.dispatch({ do: "tell", notice });
  if (!attempt) {
    tell(told("Left as it was.", "The page has no room for another arrangement, or has it already.", false));
    return;
  }
  const { places, compared } = attempt;
  const words = comparedText(compared);
  if (compared.isBetter) {
    store.dispatch({ do: "make", command: (bench) => arrangeParts(bench, places) });
    tell({ ...told("Arranged.", words, false), offers: [{ words: "Undo", action: { do: "undo" } }] });
    return;
  }
  const offer = { words: "Take it nevertheless", action: { do: "take-arranged", places } } as const;
  tell({ ...told("Left as it was.", words, false), offers: [offer] });
}
