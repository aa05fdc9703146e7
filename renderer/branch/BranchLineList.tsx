import { createContext, useContext } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import type { BranchControl, BranchLine, BranchRow } from "../../core/live/branch.ts";
import { apartFrom } from "../../core/live/branchRow.ts";
import { Icon } from "../panels/Icon.tsx";
import { StateGlyph } from "../panels/StateGlyph.tsx";
import { accessOf, BranchRowItem } from "./BranchRowItem.tsx";
import { controlText } from "./branchWords.ts";

/** What the branch itself carries, so that the line of a control need not show it again. */
export const MainLine = createContext<ReadonlySet<string>>(new Set());

interface Shown {
  readonly circuit: Circuit;
  readonly line: BranchLine;
  readonly controls: readonly BranchControl[];
  readonly isNested?: boolean;
}

/** One line of the branch from battery + down to battery −, or the part of it that is its own. */
export function BranchLineList({ circuit, line, controls, isNested = false }: Shown) {
  let access: string | null = null;
  return (
    <div className={isNested ? "line is-nested" : "line"}>
      {line.from !== null && !saysPlace(line.rows[0]) && <p className="line-end caption">from {line.from}</p>}
      <ol>
        {line.rows.map((row) => {
          const before = access;
          access = accessOf(circuit, row) ?? access;
          const own = controlsOf(row, controls);
          return (
            <BranchRowItem key={row.id} circuit={circuit} row={row} before={before}>
              {own.length > 0 &&
                own.map((control) => (
                  <ControlledBy
                    key={`${control.sort} ${control.what}`}
                    circuit={circuit}
                    control={control}
                    all={controls}
                  />
                ))}
            </BranchRowItem>
          );
        })}
      </ol>
      {line.to !== null && !saysPlace(line.rows.at(-1)) && <p className="line-end caption">to {line.to}</p>}
    </div>
  );
}

/** A splice or a ground point at the end of a line names the place itself. */
function saysPlace(row: BranchRow | undefined): boolean {
  return row?.is === "splice" || row?.is === "ground";
}

function controlsOf(row: BranchRow, controls: readonly BranchControl[]): readonly BranchControl[] {
  return row.is === "part" && row.contacts.length > 0 ? controls.filter(({ part }) => part === row.part) : [];
}

/** What moves a contact of the line: folded, one line of how it stands; opened, its own feed and return. */
function ControlledBy({
  circuit,
  control,
  all,
}: {
  readonly circuit: Circuit;
  readonly control: BranchControl;
  readonly all: readonly BranchControl[];
}) {
  const main = useContext(MainLine);
  const others = all.filter(({ part }) => part !== control.part);
  return (
    <details className="controlled">
      <summary className="small">
        <Icon name="onward" size={16} />
        <StateGlyph state={control.pin.state} size={14} />
        {controlText(control)}
      </summary>
      {control.lines.length === 0 && <p className="caption controlled-none">Nothing leads there now.</p>}
      {control.lines.map((line, index) => (
        <BranchLineList key={index} circuit={circuit} line={apartFrom(line, main)} controls={others} isNested />
      ))}
    </details>
  );
}
