import { memo, useMemo } from "react";
import { restPose } from "../../core/circuit/sheetPose.ts";
import { boundsOfAll } from "../../core/drawing/measure.ts";
import { millimetresOf } from "../../core/drawing/scale.ts";
import { firstPart } from "../../core/edit/newPart.ts";
import type { Kind, Look } from "../../core/parts/kind.ts";
import { viewOf } from "../../core/parts/view.ts";
import { MarkSvg } from "../panels/MarkSvg.tsx";

interface Shown {
  readonly kind: Kind;
  readonly volts: number;
  readonly look: Look;
  readonly onTake: (kind: string) => void;
}

/** Size of the picture, pixels, and the most pixels for a millimetre. */
const WIDTH = 72;
const HEIGHT = 48;
const MOST_SCALE = 3;
/** Room round the ink, millimetres. */
const ROOM = 1;

/** A kind of part: its symbol at rest over the trade's word for it. */
export const PartTile = memo(function PartTile({ kind, volts, look, onTake }: Shown) {
  const picture = useMemo(() => pictureOf(kind, volts, look), [kind, volts, look]);
  return (
    <button type="button" className="kind-tile" onClick={() => onTake(kind.name)}>
      <span className="kind-picture">
        <MarkSvg {...picture} className="kind-symbol" />
      </span>
      <span className="kind-name">{kind.title}</span>
    </button>
  );
});

function pictureOf(kind: Kind, volts: number, look: Look) {
  const view = viewOf(kind, firstPart(kind, `${kind.letter}1`), volts);
  const { marks } = kind.symbol(view, restPose(kind, view), look);
  const ink = marks.filter(({ mark }) => mark !== "text");
  const { left, top, right, bottom } = boundsOfAll(ink) ?? { left: 0, top: 0, right: 4, bottom: 4 };
  const [width, height] = [millimetresOf(right - left) + 2 * ROOM, millimetresOf(bottom - top) + 2 * ROOM];
  const scale = Math.min(WIDTH / width, HEIGHT / height, MOST_SCALE);
  return {
    marks: ink,
    box: [millimetresOf(left) - ROOM, millimetresOf(top) - ROOM, width, height] as const,
    width: width * scale,
    height: height * scale,
  };
}
