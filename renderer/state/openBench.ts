import type { Circuit } from "../../core/circuit/circuit.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { type Desk, deskFor } from "../../core/edit/history.ts";
import { questionsIn } from "../../core/lesson/scene.ts";
import { HAND } from "../canvas/tool.ts";
import { FIRST_LESSON } from "../class/lesson.ts";
import { CLOSED_CUPBOARD } from "../instructor/cupboard.ts";
import { NO_JUMPER } from "./jumpering.ts";
import type { Asking, Open, Standing, Versions } from "./state.ts";

/** How many versions are shown at first, and how many more at a time. */
export const VERSIONS_SHOWN = 8;

const NO_VERSIONS: Versions = { rows: null, besides: [], shown: VERSIONS_SHOWN, trouble: null };

/** Of what a host or a bench says, only where it stands in the library. */
export function standing({ id, version, benchVersion }: Standing): Standing {
  return { id, version, benchVersion };
}

/** Something that was not asked yet. */
export function notAsked<T>(): Asking<T> {
  return { answer: null, isOld: false, trouble: null };
}

/** A bench as it is brought out, not counted yet: first page in sight, the view chosen that helps most. */
export function openFor(desk: Desk, stored: Pick<Open, "id" | "version" | "benchVersion" | "isTrial">): Open {
  const { circuit } = desk.bench;
  return {
    ...stored,
    number: 0,
    desk,
    page: firstPage(circuit),
    viewports: {},
    chosen: null,
    also: [],
    tool: HAND,
    editing: null,
    adjusting: null,
    isAdding: false,
    hovered: null,
    wish: null,
    held: [],
    gesture: 0,
    time: { steps: 0, isPassing: true },
    stoodBefore: null,
    showsChanged: false,
    traces: {},
    lesson: FIRST_LESSON,
    recent: [],
    panel: questionsIn(circuit) > 0 ? "condition" : "order",
    step: null,
    order: notAsked(),
    earlier: null,
    suspect: null,
    isWithSuspect: false,
    proof: notAsked(),
    connector: circuit.connectors[0]?.id ?? "",
    tables: notAsked(),
    verdicts: notAsked(),
    place: "",
    shares: notAsked(),
    isSeeking: false,
    sneaks: notAsked(),
    jumper: NO_JUMPER,
    jumped: notAsked(),
    cupboard: CLOSED_CUPBOARD,
    saved: "saved",
    versions: NO_VERSIONS,
    jobs: null,
    printing: { what: "sheet", page: null, connector: circuit.connectors[0]?.id ?? "" },
    pages: notAsked(),
  };
}

/** A circuit on an empty bench with nothing done yet. */
export function deskWith(circuit: Circuit): Desk {
  return deskFor(benchFor(circuit));
}

/** The page on which most controls stand: there the circuit is played. */
function firstPage({ pages, parts, placement }: Circuit): string {
  const controls = (page: string): number =>
    parts
      .filter(({ id }) => placement.parts[id]?.page === page)
      .reduce((sum, part) => sum + (part.controls?.length ?? (part.positions ? 1 : 0)), 0);
  const best = pages.reduce<{ readonly id: string; readonly count: number } | null>((most, { id }) => {
    const count = controls(id);
    return most === null || count > most.count ? { id, count } : most;
  }, null);
  return best?.id ?? "";
}
