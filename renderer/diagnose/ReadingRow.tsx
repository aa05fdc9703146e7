import { useMemo } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { isDrain } from "../../core/diagnose/drain.ts";
import { finenessOf } from "../../core/diagnose/evidence.ts";
import { expectedOf } from "../../core/diagnose/expected.ts";
import type { Reading } from "../../core/diagnose/reading.ts";
import { readingFits } from "../../core/diagnose/readingFits.ts";
import { markReading } from "../../core/edit/commands/markReading.ts";
import { removeReading } from "../../core/edit/commands/removeReading.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { measuredScale } from "../../core/live/restVolts.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { batteryVoltsNow, complaintNow } from "../state/views.ts";
import { isAsWanted, readingLeads, timeText, valueText, wantedText } from "../words/reading.ts";
import { settingWords } from "../words/step.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly reading: Reading;
  /** Its number, from 1. */
  readonly number: number;
  /** It cannot be right together with another. */
  readonly isClashing: boolean;
}

/** One reading: where, how the circuit was set, what was read beside what was wanted, and what can be done about it. */
export function ReadingRow({ circuit, reading, number, isClashing }: Shown) {
  const { dispatch } = useAppStore();
  const make = useMake();
  const complaint = useApp(complaintNow);
  const isAsleep = complaint !== null && isDrain(complaint, circuit);
  const isFitting = readingFits(circuit, reading);
  const wanted = useMemo(() => {
    if (!isFitting) return null;
    const wiring = wiringOf(circuit);
    return expectedOf(wiring, { ...reading, fineness: finenessOf(wiring, reading, isAsleep) });
  }, [circuit, reading, isFitting, isAsleep]);
  const batteryVolts = useApp(batteryVoltsNow);
  const scale = useMemo(() => measuredScale(wiringOf(circuit), batteryVolts), [circuit, batteryVolts]);
  const isOff = wanted !== null && !isAsWanted(reading, wanted, scale);
  const { standing, time } = reading;
  const mark = (next: Reading["standing"]): void => make((bench) => markReading(bench, number, next));
  return (
    <li className={`reading-row is-${standing}`}>
      <span className="knot figures" aria-hidden="true">
        {number}
      </span>
      <div className="step-body">
        <button
          type="button"
          className="reading-head"
          onClick={() => dispatch({ do: "find-named", id: reading.red })}
          disabled={!isFitting}
        >
          <b className="together">{reading.red}</b>
          <b className="reading-value figures">{valueText(circuit, reading)}</b>
          <span className={isOff ? "small figures is-found" : "small figures"}>
            {wanted ? `${isOff ? "wanted" : "as wanted,"} ${wantedText(wanted)}` : "not on the drawing any more"}
          </span>
        </button>
        <p className="small">
          {settingWords(circuit, reading.condition, [])} · {readingLeads(reading)}
          {time === null ? "" : ` · ${timeText(time)}`}
        </p>
        {standing !== "taken" && <p className="small">{STANDING[standing]}</p>}
        {isClashing && standing === "taken" && (
          <p className="small is-found">Does not go with the others: read it again.</p>
        )}
        <p className="reading-acts">
          {(["doubted", "struck"] as const).map((next) => (
            <Act
              key={next}
              words={standing === next ? "Take as right" : MARKS[next]}
              number={number}
              onClick={() => mark(standing === next ? "taken" : next)}
            />
          ))}
          <Act words="Remove" number={number} onClick={() => make((bench) => removeReading(bench, number))} />
        </p>
      </div>
    </li>
  );
}

const MARKS = { doubted: "Doubt", struck: "Strike out" } as const;

const STANDING = { doubted: "Doubted: counts for little.", struck: "Struck out: counts for nothing." } as const;

function Act({
  words,
  number,
  onClick,
}: {
  readonly words: string;
  readonly number: number;
  readonly onClick: () => void;
}) {
  return (
    <button type="button" className="button is-quiet is-low" onClick={onClick}>
      {words}
      <span className="unseen"> reading {number}</span>
    </button>
  );
}
