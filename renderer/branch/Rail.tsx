import { memo, useMemo } from "react";
import type { WireState } from "../../core/base/states.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { chevronMarks } from "../../core/drawing/glyph.ts";
import type { Mark } from "../../core/drawing/mark.ts";
import type { BranchRow, BranchWire } from "../../core/live/branch.ts";
import { straightSymbol } from "../../core/paper/straightSymbol.ts";
import { MarkSvg } from "../panels/MarkSvg.tsx";
import { useApp } from "../state/AppContext.tsx";

/** Half the picture of a symbol in millimetres of the sheet, and the pixels of one. */
const HALF_MM = 4.4;
const PIXELS_PER_MM = 4;
const SIZE = 2 * HALF_MM * PIXELS_PER_MM;
/** Where the middle of a symbol stands below the top of its row. */
const MIDDLE = 22;
const LEAST_AMPS = 0.005;

/** The line of the branch beside a row: its state above and below, and the part on it as it stands now. */
export const Rail = memo(function Rail({ circuit, row }: { readonly circuit: Circuit; readonly row: BranchRow }) {
  return row.is === "wire" ? <WireRail row={row} /> : <PartRail circuit={circuit} row={row} />;
});

function PartRail({ circuit, row }: { readonly circuit: Circuit; readonly row: BranchRow }) {
  const look = useApp((state) => state.settings.look);
  const { marks, top, bottom, sign } = useMemo(() => straightSymbol(circuit, row, look), [circuit, row, look]);
  const isBelowBody = row.is === "ground" && row.exit.point === null;
  const isAboveBody = row.is === "ground" && row.entry.point === null;
  return (
    <span className="rail" aria-hidden="true">
      {!isAboveBody && <Stretch state={row.entry.state} from={0} to={MIDDLE + top * PIXELS_PER_MM} />}
      {!isBelowBody && <Stretch state={row.exit.state} from={MIDDLE + bottom * PIXELS_PER_MM} />}
      <MarkSvg
        marks={marks}
        box={[-HALF_MM, -HALF_MM, 2 * HALF_MM, 2 * HALF_MM]}
        width={SIZE}
        height={SIZE}
        className="rail-symbol"
      />
      {sign !== "" && <b className="rail-sign">{sign}</b>}
    </span>
  );
}

/** One list for each state, so that a row drawn again keeps its picture. */
const chevrons = new Map<WireState, readonly Mark[]>();

function chevronOf(state: WireState): readonly Mark[] {
  const marks = chevrons.get(state) ?? chevronMarks({ x: 0, y: 0 }, 90, state);
  chevrons.set(state, marks);
  return marks;
}

/** A wire whose ends differ is cut in its middle; current shows as a chevron. */
function WireRail({ row }: { readonly row: BranchWire }) {
  const { entry, exit, amps } = row;
  return (
    <span className="rail" aria-hidden="true">
      {entry.state === exit.state ? (
        <Stretch state={entry.state} from={0} />
      ) : (
        <>
          <Stretch state={entry.state} from={0} isUpperHalf />
          <Stretch state={exit.state} isLowerHalf />
        </>
      )}
      {Math.abs(amps) >= LEAST_AMPS && (
        <MarkSvg
          marks={chevronOf(entry.state)}
          box={[-1.8, -1.8, 3.6, 3.6]}
          width={14}
          height={14}
          className={amps > 0 ? "rail-chevron" : "rail-chevron is-back"}
        />
      )}
    </span>
  );
}

function Stretch({
  state,
  from,
  to,
  isUpperHalf,
  isLowerHalf,
}: {
  readonly state: WireState;
  readonly from?: number;
  readonly to?: number;
  readonly isUpperHalf?: boolean;
  readonly isLowerHalf?: boolean;
}) {
  const place = isUpperHalf
    ? { top: 0, bottom: "calc(50% + 3px)" }
    : isLowerHalf
      ? { top: "calc(50% + 3px)", bottom: 0 }
      : { top: from, ...(to === undefined ? { bottom: 0 } : { height: Math.max(0, to - (from ?? 0)) }) };
  return <i className={`rail-line is-${state}`} style={place} />;
}
