import { useMemo, useState } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { DIFFICULTIES, type GradedFault } from "../../core/lesson/graded.ts";
import { Icon } from "../panels/Icon.tsx";
import { counted } from "../words/figures.ts";
import type { Cupboard } from "./cupboard.ts";
import { type CupboardRow, cupboardPlaces, gradedRows } from "./cupboardRows.ts";
import { useCupboard } from "./useCupboard.ts";
import { DIFFICULTY_TITLES, hardnessWords } from "./words.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly cupboard: Cupboard;
}

/** Rows that are laid out at once; of more, typing finds the rest. */
const MOST_ROWS = 250;
/** Up to so many things, what can be wrong with each stands open. */
const OPEN_UP_TO = 4;

/** The faults, narrowed to what is typed: by place and thing, or by difficulty behind a complaint. */
export function CupboardList({ circuit, cupboard }: Shown) {
  const { ask } = useCupboard();
  const { typed, graded, done } = cupboard;
  return (
    <section aria-label="Faults">
      <label className="field cupboard-search">
        <Icon name="find" size={16} />
        <input
          type="search"
          value={typed}
          placeholder="S6, broken, corroded, dash"
          aria-label="Narrow the faults"
          onChange={(event) => ask({ act: "set", change: { typed: event.target.value } })}
        />
      </label>
      {graded ? (
        <ByDifficulty faults={graded.faults} typed={typed} />
      ) : (
        done === null && <ByPlace circuit={circuit} typed={typed} />
      )}
    </section>
  );
}

function ByPlace({ circuit, typed }: { readonly circuit: Circuit; readonly typed: string }) {
  const places = useMemo(() => cupboardPlaces(circuit, typed), [circuit, typed]);
  const rows = places.reduce((sum, place) => sum + place.rows.length, 0);
  const faults = places.reduce((sum, place) => sum + place.rows.reduce((each, row) => each + row.faults.length, 0), 0);
  const isNarrow = rows <= OPEN_UP_TO;
  let left = MOST_ROWS;
  return (
    <>
      <p className="small cupboard-line" role="status">
        {counted(faults, "fault")} on {counted(rows, "thing")}
        {rows > MOST_ROWS ? `; the first ${MOST_ROWS} are shown, type to find the others` : ""}
      </p>
      {places.map(({ name, rows: own }) => {
        const shown = own.slice(0, Math.max(0, left));
        left -= shown.length;
        return shown.length === 0 ? null : (
          <section key={name} aria-label={name}>
            <h3 className="place-name">{name}</h3>
            <ul className="cupboard-rows">
              {shown.map((row) => (
                <Row key={`${row.target} ${isNarrow}`} row={row} isOpen={isNarrow} />
              ))}
            </ul>
          </section>
        );
      })}
    </>
  );
}

/** One thing; its faults are laid out once it is opened, since a vehicle has thousands. */
function Row({ row, isOpen }: { readonly row: CupboardRow; readonly isOpen: boolean }) {
  const { cupboard, ask } = useCupboard();
  const [isShown, setShown] = useState(isOpen);
  const { target, about, faults } = row;
  return (
    <li>
      <details open={isShown} onToggle={(event) => setShown(event.currentTarget.open)}>
        <summary>
          <Icon name="onward" size={16} />
          <b className="together">{target}</b>
          <span className="small">{about}</span>
          <span className="cupboard-count small">
            {faults.length}
            <span className="unseen"> faults</span>
          </span>
        </summary>
        {isShown && (
          <ul>
            {faults.map((fault) => (
              <li key={fault.id}>
                <button
                  type="button"
                  className="menu-item"
                  aria-pressed={cupboard?.taken?.fault.id === fault.id}
                  onClick={() => ask({ act: "take", fault, seed: null })}
                >
                  {fault.title}
                </button>
              </li>
            ))}
          </ul>
        )}
      </details>
    </li>
  );
}

function ByDifficulty({ faults, typed }: { readonly faults: readonly GradedFault[]; readonly typed: string }) {
  const { cupboard, ask } = useCupboard();
  const shown = gradedRows(faults, typed);
  return (
    <>
      <p className="small cupboard-line" role="status">
        {counted(shown.length, "fault")} behind this complaint, easiest first
      </p>
      {DIFFICULTIES.map((each) => {
        const own = shown.filter(({ difficulty }) => difficulty === each);
        return own.length === 0 ? null : (
          <section key={each} aria-label={DIFFICULTY_TITLES[each]}>
            <h3 className="place-name">{DIFFICULTY_TITLES[each]}</h3>
            <ul className="cupboard-rows">
              {own.map((graded) => (
                <li key={graded.possible.id}>
                  <button
                    type="button"
                    className="menu-item cupboard-graded"
                    aria-pressed={cupboard?.taken?.fault.id === graded.possible.id}
                    onClick={() => ask({ act: "take", fault: graded.possible, seed: null })}
                  >
                    <b>{graded.possible.title}</b>
                    <span className="small">
                      {hardnessWords(graded)}
                      {graded.canBeProven ? "" : "; something else reads like it everywhere"}
                    </span>
                  </button>
                </li>
              ))}
            </ul>
          </section>
        );
      })}
    </>
  );
}
