import { remember } from "../../core/base/memo.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { instrumentsNow } from "../../core/edit/instrumentsNow.ts";
import type { Lead } from "../../core/live/attachment.ts";
import { plusBattery, referenceBattery } from "../../core/live/network.ts";
import type { Thing } from "../state/state.ts";
import { shownFigure } from "../words/instrument.ts";
import type { Ground } from "./halos.ts";
import { spotOf } from "./places.ts";
import { paintTag, setTagType, TAG_HEIGHT, tagWidth } from "./tag.ts";
import { pixelOf } from "./viewport.ts";

/** A lead of an instrument, or its jaws, where it is clipped. */
export interface LeadHere {
  /** "R" and "B" for leads, "A" for the jaws of a clamp. */
  readonly sign: "R" | "B" | "A";
  /** The number of the instrument where several lie on the bench, else empty. */
  readonly number: string;
  /** A point, a battery's post, or a wire. */
  readonly at: Lead;
  readonly isWire: boolean;
  /** What the instrument shows, beside its red lead or its jaws. */
  readonly words: string;
}

/** Every lead and clamp that is on. */
export const leadsHere = remember((bench: Bench): readonly LeadHere[] => {
  const shown = instrumentsNow(bench);
  const several = bench.clipped.length > 1;
  return bench.clipped.flatMap((each): readonly LeadHere[] => {
    const number = several ? each.id : "";
    const words = shownFigure(shown.get(each.id)!);
    if (each.instrument === "clamp")
      return each.around === null ? [] : [{ sign: "A", number, at: each.around, isWire: true, words }];
    const { red, black } = each;
    return [
      ...(red === null ? [] : [{ sign: "R", number, at: red, isWire: false, words } as const]),
      ...(black === null ? [] : [{ sign: "B", number, at: black, isWire: false, words: "" } as const]),
    ];
  });
});

/** The leads without what the instruments show, while the states are covered up. */
export const leadsAlone = remember((bench: Bench): readonly LeadHere[] =>
  leadsHere(bench).map((lead) => ({ ...lead, words: "" })),
);

/** Length of a tag's pole, and how far tags stand apart, pixels at any zoom. */
const POLE = 9;
const APART = 3;

/**
 * Paints leads as tags below the places they are clipped to: a framed R with what is shown, an inverse B, a framed A round
 * a wire. One that would lie over another hangs below it.
 */
export function paintLeads(ground: Ground, circuit: Circuit, leads: readonly LeadHere[]): void {
  const { canvas, view, marks, standing, tones } = ground;
  const taken: Box[] = [];
  canvas.save();
  setTagType(canvas);
  for (const { sign, number, at, isWire, words: shown } of leads) {
    const place: Thing = isWire ? { is: "wire", id: at } : { is: "point", id: pointOf(circuit, at) };
    const spot = spotOf(place, marks, standing);
    if (!spot) continue;
    const { x, y } = pixelOf(view, spot);
    const from = { x: Math.round(x), y: Math.round(y) };
    const words = `${sign}${number}${shown === "" ? "" : `  ${shown}`}`;
    const top = clearOf(taken, from.x, from.y + POLE, tagWidth(canvas, words));
    paintTag(canvas, tones, { words, from, left: from.x, top, corners: 4, isInverse: sign === "B" });
  }
  canvas.restore();
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
}

/** The top of a tag that keeps clear of those before it: below any that it would lie over. */
function clearOf(taken: Box[], left: number, from: number, width: number): number {
  const meets = (top: number): boolean =>
    taken.some(
      (box) => left < box.left + box.width && box.left < left + width && Math.abs(box.top - top) < TAG_HEIGHT + APART,
    );
  let top = from;
  while (meets(top)) top += TAG_HEIGHT + APART;
  taken.push({ left, top, width });
  return top;
}

/** The point of the drawing where a lead is: of a post, the battery's own terminal. */
function pointOf(circuit: Circuit, lead: Lead): string {
  if (lead === "battery +") return `${plusBattery(circuit)?.id}.+`;
  return lead === "battery -" ? `${referenceBattery(circuit)?.id}.-` : lead;
}
