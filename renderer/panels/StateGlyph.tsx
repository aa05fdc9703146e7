import type { WireState } from "../../core/base/states.ts";
import { glyphMarks } from "../../core/drawing/glyph.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import { MarkSvg } from "./MarkSvg.tsx";

const MIDDLE = { x: 0, y: 0 };
/** One list for each glyph, so that a row drawn again keeps its picture. */
const marksFor = new Map<string, readonly Mark[]>();

function marksOf(state: WireState, alwaysFed: boolean): readonly Mark[] {
  const key = `${state}${alwaysFed}`;
  const marks = marksFor.get(key) ?? glyphMarks(state, MIDDLE, { alwaysFed });
  marksFor.set(key, marks);
  return marks;
}

/** The glyph of a wire state, with the bar of what is always fed. */
export function StateGlyph({
  state,
  alwaysFed = false,
  size = 16,
}: {
  readonly state: WireState;
  readonly alwaysFed?: boolean;
  readonly size?: number;
}) {
  return (
    <MarkSvg
      marks={marksOf(state, alwaysFed)}
      box={[-2.1, alwaysFed ? -1.7 : -2.1, 4.2, 4.2]}
      width={size}
      height={size}
      className="glyph"
    />
  );
}
