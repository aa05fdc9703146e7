import type { Outcome } from "../../core/base/outcome.ts";
import { underlaysOf } from "../../core/circuit/underlays.ts";
import type { Quad } from "../../core/drawing/projection.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { addUnderlay } from "../../core/edit/commands/addUnderlay.ts";
import { cropUnderlay } from "../../core/edit/commands/cropUnderlay.ts";
import { lockUnderlay } from "../../core/edit/commands/lockUnderlay.ts";
import { moveUnderlay } from "../../core/edit/commands/moveUnderlay.ts";
import { placeUnderlay } from "../../core/edit/commands/placeUnderlay.ts";
import { removePage } from "../../core/edit/commands/removePage.ts";
import { removeUnderlay } from "../../core/edit/commands/removeUnderlay.ts";
import { reorderUnderlay } from "../../core/edit/commands/reorderUnderlay.ts";
import { scaleUnderlay } from "../../core/edit/commands/scaleUnderlay.ts";
import { showUnderlay } from "../../core/edit/commands/showUnderlay.ts";
import { tieToPrint } from "../../core/edit/commands/tieToPrint.ts";
import { turnUnderlay } from "../../core/edit/commands/turnUnderlay.ts";
import { untieFromPrint } from "../../core/edit/commands/untieFromPrint.ts";
import type { Edit } from "../../core/edit/edit.ts";
import { PHOTO, SHEET } from "../circuit/printed.ts";

/** What lots are drawn from. */
interface Draws {
  readonly number: () => number;
  readonly one: <T>(list: readonly T[]) => T;
}

const nothing: Outcome<Edit> = { ok: false, refusal: { code: "not-there", about: {} } };

/** A command on a printed page by lot, where there is one. */
function onOne(make: (bench: Bench, id: string, draws: Draws) => Outcome<Edit>) {
  return (bench: Bench, draws: Draws): Outcome<Edit> => {
    const lying = underlaysOf(bench.circuit);
    return lying.length === 0 ? nothing : make(bench, draws.one(lying).underlay.id, draws);
  };
}

/** Corners anywhere about a page: folded ones are refused. */
function corners({ number }: Draws): Quad {
  const spot = (x: number, y: number) => [x + (number() % 120) - 60, y + (number() % 120) - 60] as const;
  return [spot(0, 0), spot(297, 0), spot(297, 210), spot(0, 210)];
}

const things = ({ circuit }: Bench): readonly string[] => [...circuit.parts, ...circuit.wires].map(({ id }) => id);

/** Commands for printed pages by lot. */
export const PRINTED_BY_LOT = {
  "add-underlay": (bench: Bench, { one }: Draws) =>
    addUnderlay(bench, one(bench.circuit.pages).id, one([SHEET, PHOTO])),
  "move-underlay": onOne((bench, id, { number }) =>
    moveUnderlay(bench, id, (number() % 99) - 49, (number() % 99) - 49),
  ),
  "turn-underlay": onOne((bench, id, { one }) => turnUnderlay(bench, id, one(["clockwise", "back"] as const))),
  "scale-underlay": onOne((bench, id, { number }) => scaleUnderlay(bench, id, 0.5 + (number() % 30) / 20)),
  "place-underlay": onOne((bench, id, draws) => placeUnderlay(bench, id, corners(draws))),
  "crop-underlay": onOne((bench, id, { number }) => {
    if (number() % 4 === 0) return cropUnderlay(bench, id, null);
    const [left, top] = [(number() % 40) / 100, (number() % 40) / 100];
    return cropUnderlay(bench, id, { left, top, right: 1 - (number() % 40) / 100, bottom: 1 - (number() % 40) / 100 });
  }),
  "show-underlay": onOne((bench, id, { number, one }) =>
    showUnderlay(
      bench,
      id,
      one([
        { opacity: (number() % 10) / 10 },
        { contrast: 1 + (number() % 3) },
        { whiteOut: true },
        { isHidden: false },
      ]),
    ),
  ),
  "lock-underlay": onOne((bench, id, { number }) => lockUnderlay(bench, id, number() % 2 === 0)),
  "remove-underlay": onOne((bench, id) => removeUnderlay(bench, id)),
  "reorder-underlay": onOne((bench, id, { number }) => reorderUnderlay(bench, id, number() % 3)),
  "tie-to-print": onOne((bench, underlay, { one, number }) =>
    tieToPrint(bench, one(things(bench)), { underlay, x: number() % 2_000, y: number() % 1_500 }),
  ),
  "untie-from-print": (bench: Bench, { one }: Draws) => untieFromPrint(bench, one(things(bench))),
  "remove-page": (bench: Bench, { one }: Draws) => {
    const { pages } = bench.circuit;
    return pages.length < 2 ? nothing : removePage(bench, one(pages).id, one(pages).id);
  },
} as const;

/** What may be refused of them. */
export const PRINTED_REFUSED: readonly string[] = [
  "underlay-locked",
  "underlays-many",
  "underlay-off-page",
  "corners-fold",
  "corners-far",
  "spot-off-picture",
  "edit-place",
  "not-tied",
  "page-in-use",
];
