import { useMemo, useState } from "react";
import type { ControlKey } from "../../core/base/ids.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { useApp } from "../state/AppContext.tsx";
import { circuitNow, complaintNow, conditionNow } from "../state/views.ts";
import { ControlSegments } from "./ControlSegments.tsx";
import { MoreControls } from "./MoreControls.tsx";
import { inCircuitOrder, pageFirst } from "./stripControls.ts";
import { type StripRow, stripRow } from "./stripRow.ts";
import { useRoom } from "./useRoom.ts";
import { useWidths } from "./useWidths.ts";

/** Between two controls, and room for "More" behind them, pixels. */
const GAP = 16;
const MORE_WIDTH = 190;
const NONE: readonly ControlKey[] = [];

/** The controls in hand, each with all its positions; what has no room stands under More. In a narrow window all in one row. */
export function ControlsStrip() {
  const circuit = useApp(circuitNow);
  const { width } = useRoom();
  if (!circuit) return null;
  const isNarrow = width === "narrow" || width === "slim";
  return (
    <section className={isNarrow ? "strip is-pushed" : "strip"} aria-label="Controls">
      {isNarrow ? <AllControls circuit={circuit} /> : <FittingControls circuit={circuit} />}
    </section>
  );
}

/** Every control in one row that is pushed sideways. */
function AllControls({ circuit }: { readonly circuit: Circuit }) {
  const page = useApp(({ open }) => open?.page ?? "");
  return (
    <div className="strip-row">
      {pageFirst(circuit, page).map((control) => (
        <ControlSegments key={control.key} control={control} />
      ))}
    </div>
  );
}

function FittingControls({ circuit }: { readonly circuit: Circuit }) {
  const condition = useApp(conditionNow);
  const page = useApp(({ open }) => open?.page ?? "");
  const recent = useApp(({ open }) => open?.recent ?? NONE);
  const complaint = useApp(complaintNow);
  const wanted = useMemo(() => Object.keys(complaint?.condition.set ?? {}), [complaint]);
  const all = useMemo(() => inCircuitOrder(circuit), [circuit]);
  const { row, widths, room } = useWidths(useMemo(() => JSON.stringify(all), [all]));
  const [before, setBefore] = useState<StripRow | null>(null);
  const [isOpen, setIsOpen] = useState(false);
  // Nothing leaves the open list under the hand that throws it there.
  const isStill = isOpen && before !== null;
  const now =
    widths === null || isStill
      ? before
      : stripRow(before, { circuit, condition, page, recent, wanted }, { room, widths, gap: GAP, more: MORE_WIDTH });
  if (now !== before) setBefore(now);
  const isShown = (key: ControlKey): boolean => widths === null || !now || now.shown.includes(key);
  const folded = all.filter(({ key }) => !isShown(key));
  return (
    <div className="strip-row" ref={row}>
      {all.map((control) => isShown(control.key) && <ControlSegments key={control.key} control={control} />)}
      {folded.length > 0 && <MoreControls controls={folded} onOpen={setIsOpen} />}
    </div>
  );
}
