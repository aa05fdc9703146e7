import { useMemo } from "react";
import { liveNow } from "../../core/edit/liveNow.ts";
import { useApp } from "../state/AppContext.tsx";
import type { AppState, Open } from "../state/state.ts";
import type { Knot } from "./knots.ts";
import type { Shown } from "./shown.ts";
import { HAND } from "./tool.ts";
import type { Margins } from "./viewport.ts";

const NO_KNOTS: readonly Knot[] = [];
/** Steps after the next one that are pinned on the drawing; all of a long order would hide what they point at. */
const MOST_AHEAD = 5;
const NO_IDS: ReadonlySet<string> = new Set();
/** Room at the edges of a fitted drawing: at the top for the tools and for the switch between good and faulty. */
const MARGINS: Margins = { top: 64, right: 24, bottom: 24, left: 24 };

/** What the drawing is to show now; null while nothing is open. The same state gives the same object. */
export function useShown(): Shown | null {
  const open = useApp((state) => state.open);
  const palette = useApp((state) => state.theme);
  const look = useApp((state) => state.settings.look);
  const { desk, page, viewports, chosen, also, tool, hovered, wish } = open ?? NOTHING;
  const knots = useApp(knotsNow);
  return useMemo(() => {
    if (!desk) return null;
    const { bench } = desk;
    const { shown, differs } = liveNow(bench);
    return {
      circuit: bench.circuit,
      page,
      live: shown,
      palette,
      look,
      viewport: viewports[page] ?? null,
      selection: chosen,
      also,
      tool,
      hover: hovered,
      knots,
      faults: bench.showFaults ? bench.faults : [],
      different: bench.showFaults ? new Set([...differs.parts, ...differs.wires]) : NO_IDS,
      wish,
      margins: MARGINS,
    };
  }, [desk, page, viewports, chosen, also, tool, hovered, wish, knots, palette, look]);
}

const NOTHING = {
  desk: null,
  page: "",
  viewports: {},
  chosen: null,
  also: [],
  tool: HAND,
  hovered: null,
  wish: null,
} as const;

let last: { readonly order: Open["order"]; readonly step: number | null; readonly knots: readonly Knot[] } | null =
  null;

/** The steps of the probe order as knots, while that view is open; the same order gives the same list. */
function knotsNow({ open }: AppState): readonly Knot[] {
  if (open?.panel !== "order" || !open.order.answer || open.desk.bench.complaint === null) return NO_KNOTS;
  const { order, step } = open;
  if (last?.order === order && last.step === step) return last.knots;
  const from = step ?? 1;
  const knots = order
    .answer!.order.steps.filter(({ number }) => number >= from && number <= from + MOST_AHEAD)
    .map(({ point, number }): Knot => ({ point, number, is: number === step ? "next" : "waiting" }));
  last = { order, step, knots };
  return knots;
}
