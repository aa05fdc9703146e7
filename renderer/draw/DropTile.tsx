import { memo, type PointerEvent, useMemo } from "react";
import type { Mark } from "../../core/drawing/mark.ts";
import { boundsOfAll } from "../../core/drawing/measure.ts";
import { millimetresOf } from "../../core/drawing/scale.ts";
import type { Dropping } from "../canvas/tool.ts";
import { MarkSvg } from "../panels/MarkSvg.tsx";

interface Shown {
  readonly title: string;
  readonly marks: readonly Mark[];
  readonly dropping: Dropping;
  readonly size: "part" | "assembly";
  /** A click, or a drag that has just begun, takes it to the drawing. */
  readonly onTake: (dropping: Dropping) => void;
}

/** Sizes of the picture, pixels, and the most pixels for a millimetre. */
const SIZES = {
  part: { width: 72, height: 48, most: 3 },
  assembly: { width: 164, height: 104, most: 2 },
} as const;
/** Room round the ink, millimetres. */
const ROOM = 1;
/** A pointer that moves less than this is still clicking, pixels. */
const STILL = 5;

/** What the catalogue offers: its drawing over the trade's word for it. It is clicked, or dragged to the drawing. */
export const DropTile = memo(function DropTile({ title, marks, dropping, size, onTake }: Shown) {
  return (
    <button
      type="button"
      className={`kind-tile is-${size}`}
      onClick={() => onTake(dropping)}
      onPointerDown={(event) => followDrag(event, () => onTake({ ...dropping, isDragged: true }))}
    >
      <KindPicture marks={marks} size={size} />
      <span className="kind-name">{title}</span>
    </button>
  );
});

/** A drawing as large as its room allows. */
export function KindPicture({ marks, size }: Pick<Shown, "marks" | "size">) {
  const picture = useMemo(() => pictureOf(marks, size), [marks, size]);
  return (
    <span className="kind-picture">
      <MarkSvg {...picture} className="kind-symbol" />
    </span>
  );
}

/** Begins a drag once a pressed pointer has moved; one that is let go before is a click. */
function followDrag({ button, target, pointerId, clientX, clientY }: PointerEvent, begin: () => void): void {
  if (button !== 0) return;
  // A finger would go on telling the tile alone where it is.
  if (target instanceof Element && target.hasPointerCapture(pointerId)) target.releasePointerCapture(pointerId);
  const end = new AbortController();
  const { signal } = end;
  document.addEventListener(
    "pointermove",
    (event) => {
      if (Math.hypot(event.clientX - clientX, event.clientY - clientY) < STILL) return;
      end.abort();
      begin();
    },
    { signal },
  );
  for (const over of ["pointerup", "pointercancel"]) document.addEventListener(over, () => end.abort(), { signal });
}

function pictureOf(marks: readonly Mark[], size: Shown["size"]) {
  const { width: most, height: tallest, most: mostScale } = SIZES[size];
  const { left, top, right, bottom } = boundsOfAll(marks) ?? { left: 0, top: 0, right: 4, bottom: 4 };
  const [width, height] = [millimetresOf(right - left) + 2 * ROOM, millimetresOf(bottom - top) + 2 * ROOM];
  const scale = Math.min(most / width, tallest / height, mostScale);
  return {
    marks,
    box: [millimetresOf(left) - ROOM, millimetresOf(top) - ROOM, width, height] as const,
    width: width * scale,
    height: height * scale,
  };
}
