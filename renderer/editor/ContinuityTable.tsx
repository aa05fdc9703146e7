import { type CSSProperties, type KeyboardEvent, useRef, useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { controlKey, terminalsOf } from "../../core/circuit/points.ts";
import { changePositions } from "../../core/edit/commands/changePositions.ts";
import { positionNow } from "../../core/edit/commands/throwControl.ts";
import type { Control, Part } from "../../core/parts/kind.ts";
import { asOnTheHandle } from "../panels/segments.ts";
import { useApp } from "../state/AppContext.tsx";
import { benchOf } from "../state/state.ts";
import { groupsOf, joinedOrParted } from "./joining.ts";
import { idleTerminals, keptOrder, leadOrder } from "./leadOrder.ts";
import { ReadsAs } from "./ReadsAs.tsx";
import { TableActs } from "./TableActs.tsx";
import { TableHead } from "./TableHead.tsx";
import { TableHint } from "./TableHint.tsx";
import { type Place, TableRow } from "./TableRow.tsx";
import { Trouble } from "./Trouble.tsx";
import { useAsked } from "./useAsk.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly part: Part;
  readonly control: Control;
  /** Shows the part in a position of this control; null as it stands. */
  readonly onShow: (position: string | null) => void;
}

/**
 * The continuity table of one control, edited as the printed chart: two circles of a row are chosen, and are joined or
 * parted. Arrows go among the circles, Enter or Space chooses, Escape lets go.
 */
export function ContinuityTable({ circuit, part, control, onShow }: Shown) {
  const { ask, trouble } = useAsked();
  const grid = useRef<HTMLTableElement>(null);
  const { positions } = control;
  const terminals = terminalsOf(circuit, part);
  const [order, setOrder] = useState(() => leadOrder(positions, terminals));
  const [at, setAt] = useState<Place>({ row: 0, column: 0 });
  const [chosen, setChosen] = useState<{ readonly position: string; readonly terminal: string } | null>(null);
  const [fresh, setFresh] = useState<string | null>(null);
  const all = keptOrder(order, terminals);
  if (all !== order) setOrder(all);
  // Of a panel, what its other controls join stands aside; what idles only since the editor was opened stays in sight.
  const [aside] = useState(() => (part.controls ? idleTerminals(positions, terminals) : []));
  const [isWhole, setIsWhole] = useState(false);
  const idle = idleTerminals(positions, terminals).filter((terminal) => aside.includes(terminal));
  const columns = isWhole ? all : all.filter((terminal) => !idle.includes(terminal));
  const now = useApp((state) => {
    const bench = benchOf(state);
    return (bench && positionNow(bench, controlKey(part, control))) ?? positions[0]?.name;
  });
  const rows = asOnTheHandle(positions).map((position) => positions.indexOf(position));
  const inHand = chosen && positions.find(({ name }) => name === chosen.position) ? chosen : null;

  const choose = (index: number, terminal: string): void => {
    const position = positions[index]!.name;
    const first = inHand?.position === position ? inHand.terminal : null;
    setChosen(first === null ? { position, terminal } : null);
    if (first === null || first === terminal) return;
    ask((bench) => changePositions(bench, part.id, control.name, joinedOrParted(positions, index, first, terminal)));
  };
  const walk = (event: KeyboardEvent): void => {
    const circle = (event.target as HTMLElement).closest<HTMLElement>("[data-column]");
    if (event.key === "Escape" && inHand) setChosen(null);
    else if (circle && event.key in STEPS) {
      const [down, right] = STEPS[event.key]!;
      const row = Number(circle.dataset.row) + down;
      const column = Number(circle.dataset.column) + right;
      grid.current?.querySelector<HTMLElement>(`[data-row="${row}"][data-column="${column}"]`)?.focus();
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const stop = { row: Math.min(at.row, rows.length - 1), column: Math.min(at.column, columns.length - 1) };
  const partners = inHand ? partnersOf(positions.find(({ name }) => name === inHand.position)!, inHand, columns) : [];
  return (
    <>
      <div className="chart-scroll">
        <table
          ref={grid}
          className="chart"
          aria-label={`Continuity table of ${part.id}`}
          style={{ "--columns": columns.length } as CSSProperties}
          onKeyDown={walk}
        >
          <TableHead circuit={circuit} part={part} columns={columns} fresh={fresh} />
          <tbody>
            {rows.map((index, row) => (
              <TableRow
                key={index}
                part={part.id}
                control={control.name}
                positions={positions}
                index={index}
                row={row}
                columns={columns}
                isNow={positions[index]!.name === now}
                isFresh={positions[index]!.name === fresh}
                chosen={inHand?.position === positions[index]!.name ? inHand.terminal : null}
                stop={row === stop.row ? stop.column : null}
                ask={ask}
                onChoose={(terminal) => choose(index, terminal)}
                onPlace={setAt}
                onShow={onShow}
              />
            ))}
          </tbody>
        </table>
      </div>
      <TableHint chosen={inHand?.terminal ?? null} partners={partners} />
      <Trouble words={trouble} />
      <TableActs
        circuit={circuit}
        part={part}
        control={control}
        chosen={inHand?.terminal ?? null}
        ask={ask}
        onFresh={setFresh}
      >
        {idle.length > 0 && (
          <button type="button" className="button is-quiet" aria-pressed={isWhole} onClick={() => setIsWhole(!isWhole)}>
            {isWhole ? "Only those joined here" : `Show ${idle.length} more of the panel`}
          </button>
        )}
      </TableActs>
      <ReadsAs circuit={circuit} part={part} positions={rows.map((index) => positions[index]!)} columns={columns} />
    </>
  );
}

/** Rows down and columns to the right for each arrow. */
const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

function partnersOf(
  { joins }: Control["positions"][number],
  { terminal }: { readonly terminal: string },
  columns: readonly string[],
): readonly string[] {
  const group = groupsOf(joins, columns).find((each) => each.includes(terminal)) ?? [];
  return group.filter((each) => each !== terminal);
}
