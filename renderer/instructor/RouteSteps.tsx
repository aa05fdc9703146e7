import { useEffect, useRef } from "react";
import { minutesText } from "../words/figures.ts";
import type { HandinMarked } from "./deskQuestion.ts";

interface Shown {
  readonly marked: HandinMarked;
  /** Number of the move shown; 0 before the first. */
  readonly at: number;
  readonly go: (at: number) => void;
}

/** The moves of a route, one a row; those that told nothing and the first wrong turn say so. A press shows the drawing after it. */
export function RouteSteps({ marked: { steps, grade }, at, go }: Shown) {
  const shown = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (at > 0) shown.current?.scrollIntoView({ block: "nearest" });
  }, [at]);
  const { wasted = [], wrongTurn = null } = grade ?? {};
  return (
    <section className="route-steps" aria-label="The moves">
      <ol>
        {steps.map(({ number, words, minutes, reading, seen }) => (
          <li key={number}>
            <button
              type="button"
              ref={number === at ? shown : undefined}
              className={number === at ? "route-step is-shown" : "route-step"}
              aria-current={number === at ? "step" : undefined}
              onClick={() => go(number)}
            >
              <span className="route-number">{number}</span>
              <b>{words}</b>
              <span className="small route-minutes">{minutesText(Number(minutes))}</span>
              {seen !== "" && (
                <span className="small route-read">
                  {reading === null ? "" : `Reading ${reading}: `}
                  {seen}
                </span>
              )}
              {wasted.includes(number) && <span className="small route-note">Told nothing that was not known</span>}
              {wrongTurn?.move === number && (
                <span className="small route-note">
                  First wrong turn, {minutesText(wrongTurn.dearer)} dearer
                  {wrongTurn.better === null ? "" : `; better: ${wrongTurn.better}`}
                </span>
              )}
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
