import type { Circuit } from "../../core/circuit/circuit.ts";
import { percent } from "../../core/diagnose/progressWords.ts";
import type { Watched, WiggleRow } from "../../core/diagnose/wiggle.ts";
import { readSwing, swingText } from "../../core/diagnose/wiggleEntry.ts";
import { takeWiggled } from "../../core/edit/commands/takeWiggled.ts";
import { Tick } from "../panels/Tick.tsx";
import { ValueField } from "../panels/ValueField.tsx";
import { useMake } from "../state/useMake.ts";
import { minutesText } from "../words/figures.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly row: WiggleRow;
  readonly watched: Watched | null;
}

/** One place to move: what may be wrong there, how to move it, a tick where nothing swung, a field where it did. */
export function WiggleEntry({ circuit, row, watched }: Shown) {
  const make = useMake();
  const { place, number, how, share, suspects, minutes, read, swings } = row;
  const still = { min: watched?.expect.low ?? 0, max: watched?.expect.high ?? 0, when: "" };
  const trim = circuit.access.find(({ id }) => id === place.access)?.label;
  return (
    <li className="reading-row">
      <span className={swings === true ? "knot is-next figures" : "knot figures"} aria-hidden="true">
        {number}
      </span>
      <div className="step-body">
        <p className="wiggle-head">
          <b>{place.title}</b>
          <span className="wiggle-share figures">
            {percent(share)} · {minutesText(minutes)}
          </span>
        </p>
        <p className="step-why">{suspects.join("; ")}</p>
        <p className="small">{[...(trim === undefined ? [] : [`${trim}.`]), ...how].join(" ")}</p>
        <div className="wiggle-entry">
          <ValueField
            label="Lowest..highest"
            value={read === null || swings === false ? "" : swingText(read)}
            usual="2.1..11.8 when bumped"
            unit="V"
            change={(typed) => (bench) => {
              if (typed.trim() === "") return takeWiggled(bench, place.id, null);
              const swing = readSwing(typed, circuit.nominalVolts);
              return swing.ok ? takeWiggled(bench, place.id, swing.value) : swing;
            }}
          />
          <span className="wiggle-when">
            <Tick
              isOn={swings === false}
              name={`${place.title}: moved, stays good`}
              onChange={(on) => make((bench) => takeWiggled(bench, place.id, on ? still : null))}
            />
            Moved, stays good
          </span>
        </div>
      </div>
    </li>
  );
}
