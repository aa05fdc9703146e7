import { useMemo } from "react";
import type { ProbeOrder, Suspect } from "../../core/diagnose/step.ts";
import { benchWith } from "../../core/edit/liveWith.ts";
import type { Fault } from "../../core/live/fault.ts";
import { usePapers } from "../printed/usePapers.ts";
import { useApp } from "../state/AppContext.tsx";
import { changedSince } from "../state/changedNow.ts";
import type { AppState } from "../state/state.ts";
import {
  isCoveredOnSheet,
  liveOnSheet,
  shownWith,
  suspectMarks,
  suspectOnSheet,
  suspectsInSight,
} from "../state/suspectNow.ts";
import type { Knot } from "./knots.ts";
import { leadsAlone, leadsHere } from "./leadTags.ts";
import { readHere } from "./readingFlags.ts";
import type { Shown } from "./shown.ts";
import { HAND } from "./tool.ts";
import type { Margins } from "./viewport.ts";

const NO_KNOTS: readonly Knot[] = [];
/** Steps after the next one that are pinned on the drawing; all of a long order would hide what they point at. */
const MOST_AHEAD = 5;
const NO_IDS: ReadonlySet<string> = new Set();
const NO_SUSPECTS: readonly Suspect[] = [];
const NO_FAULTS: readonly Fault[] = [];
/** Room at the edges of a fitted drawing: at the top for the tools, what is chosen, and the switch between good and faulty. */
const TOP = 64;
const SIDES = { right: 24, bottom: 24, left: 24 };

/** What the drawing is to show now; null while nothing is open. The same state gives the same object. */
export function useShown(): Shown | null {
  const open = useApp((state) => state.open);
  const palette = useApp((state) => state.theme);
  const look = useApp((state) => state.settings.look);
  const keys = useApp((state) => state.settings.keys);
  const scale = useApp((state) => state.settings.scale);
  const margins = useMemo((): Margins => ({ ...SIDES, top: TOP * scale }), [scale]);
  const { desk, page, viewports, chosen, also, tool, hovered, wish, step } = open ?? NOTHING;
  const papers = usePapers();
  const order = useApp(orderPinned);
  const knots = useMemo(() => (order ? knotsOf(order, step) : NO_KNOTS), [order, step]);
  const suspect = open && shownWith(open);
  const live = open && liveOnSheet(open);
  const isCovered = open !== null && isCoveredOnSheet(open);
  const inSight = open ? suspectsInSight(open) : NO_SUSPECTS;
  const marked = open && suspectOnSheet(open);
  const { showsChanged, stoodBefore } = open ?? NOTHING;
  const full = useMemo(
    () => (showsChanged && stoodBefore && live ? changedSince(stoodBefore, live.shown) : null),
    [showsChanged, stoodBefore, live],
  );
  const suspects = useMemo(() => suspectMarks(inSight, marked), [inSight, marked]);
  return useMemo(() => {
    if (!desk || !live) return null;
    const { bench } = desk;
    const { shown, differs } = live;
    const planted = bench.showFaults ? bench.faults : NO_FAULTS;
    return {
      circuit: bench.circuit,
      page,
      live: shown,
      palette,
      look,
      keys,
      viewport: viewports[page] ?? null,
      selection: chosen,
      also,
      tool,
      hover: hovered,
      knots,
      readings: readHere(bench),
      leads: (isCovered ? leadsAlone : leadsHere)(suspect ? benchWith(bench, suspect.faults) : bench),
      faults: suspect ? suspect.faults : planted,
      flagged: suspect ? [] : planted.map(({ target }) => target),
      suspects,
      different: suspect || bench.showFaults ? new Set([...differs.parts, ...differs.wires]) : NO_IDS,
      full,
      wish,
      papers,
      margins,
    };
  }, [
    desk,
    live,
    isCovered,
    suspect,
    suspects,
    full,
    papers,
    page,
    viewports,
    chosen,
    also,
    tool,
    hovered,
    wish,
    knots,
    palette,
    look,
    keys,
    margins,
  ]);
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
  step: null,
  showsChanged: false,
  stoodBefore: null,
} as const;

/** The probe order that is pinned on the drawing: while its view is open. */
function orderPinned({ open }: AppState): ProbeOrder | null {
  const isOpen = open?.panel === "order" && open.desk.bench.complaint !== null;
  return isOpen ? (open.order.answer?.order ?? null) : null;
}

/** The next step of an order and those after it. */
function knotsOf({ steps }: ProbeOrder, step: number | null): readonly Knot[] {
  const from = step ?? 1;
  return steps
    .filter(({ number }) => number >= from && number <= from + MOST_AHEAD)
    .map(({ point, number }) => ({ point, number, is: number === step ? "next" : "waiting" }));
}
