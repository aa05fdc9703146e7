import { memo, type ReactNode } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { reachOf } from "../../core/diagnose/testPoint.ts";
import type { BranchRow } from "../../core/live/branch.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import type { Thing } from "../state/state.ts";
import { Rail } from "./Rail.tsx";
import { RowAbout } from "./RowAbout.tsx";
import { Taps } from "./Taps.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly row: BranchRow;
  /** Access group of the row before, which need not be said again. */
  readonly before: string | null;
  /** What opens and closes its contacts, beside hands. */
  readonly children: ReactNode;
}

/** What a row stands for on the drawing. */
export function thingOf(row: BranchRow): Thing {
  if (row.is === "wire") return { is: "wire", id: row.wire };
  return { is: "part", id: row.is === "link" ? row.parts[0]! : row.part };
}

/** The access group behind which a row lies; null where it lies free, and for a wire. */
export function accessOf(circuit: Circuit, row: BranchRow): string | null {
  if (row.is === "wire" || row.is === "link") return null;
  return reachOf(circuit, row.entry.point ?? row.exit.point ?? row.part).access ?? null;
}

/** One row of the branch: pressing it finds the thing on the drawing; what else hangs there stands below. */
export const BranchRowItem = memo(function BranchRowItem({ circuit, row, before, children }: Shown) {
  const { dispatch } = useAppStore();
  const thing = thingOf(row);
  const isLit = useApp(({ open }) => isThing(open?.hovered, thing) || isThing(open?.chosen, thing));
  const access = accessOf(circuit, row);
  const place = access === before ? undefined : circuit.access.find(({ id }) => id === access);
  const look = ["branch-row", `is-${row.is}`, isLit ? "is-lit" : "", row.is === "part" && row.isLoad ? "is-load" : ""];
  return (
    <li className={look.join(" ")}>
      <Rail circuit={circuit} row={row} />
      <div className="branch-body">
        <button
          type="button"
          className="branch-head"
          onClick={() => dispatch({ do: "find", thing })}
          onPointerEnter={() => dispatch({ do: "hover", thing })}
          onPointerLeave={() => dispatch({ do: "hover", thing: null })}
        >
          <RowAbout circuit={circuit} row={row} />
          {place && <span className="caption branch-place">{place.label}</span>}
        </button>
        {row.taps.length > 0 && <Taps taps={row.taps} />}
        {children}
      </div>
    </li>
  );
});

function isThing(one: Thing | null | undefined, other: Thing): boolean {
  return one?.is === other.is && one.id === other.id;
}
