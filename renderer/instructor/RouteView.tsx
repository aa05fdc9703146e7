import { useEffect, useMemo, useRef, useState } from "react";
import { AT_START, type Play, stepped } from "../../core/lesson/play.ts";
import { Empty } from "../panels/Empty.tsx";
import { Icon } from "../panels/Icon.tsx";
import { minutesText } from "../words/figures.ts";
import type { HandinMarked } from "./deskQuestion.ts";
import { RouteDrawing } from "./RouteDrawing.tsx";
import { RoutePlayer } from "./RoutePlayer.tsx";
import { RouteSteps } from "./RouteSteps.tsx";
import { useHandins } from "./useHandins.ts";
import { resultTitle } from "./words.ts";

/** Seconds that a move stands when a route is played. */
const STEP_SECONDS = 3;

/** A route made again: the drawing as the vehicle stood after each move, the moves beside it, and a way to play them. */
export function RouteView({ marked }: { readonly marked: HandinMarked }) {
  const { ask } = useHandins();
  const { steps, learner, exercise, grade } = marked;
  const [play, setPlay] = useState<Play>(AT_START);
  const lengths = useMemo(() => [0, ...steps].map(() => STEP_SECONDS), [steps]);
  const step = steps[play.at - 1];
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  return (
    <main className="route">
      <header className="route-head">
        <button type="button" className="button is-quiet" onClick={() => ask({ act: "look", key: null })}>
          <Icon name="back" size={16} />
          The class
        </button>
        <h2 ref={head} tabIndex={-1}>
          <bdi>{learner}</bdi>, <bdi>{exercise}</bdi>
        </h2>
        {grade && (
          <p className="small">
            {resultTitle(grade)}
            {grade.verdict === null ? "" : ` (${grade.verdict})`}; {minutesText(grade.minutes)}
            {grade.plannersMinutes === null ? "" : `, the probe order ${minutesText(grade.plannersMinutes)}`}
          </p>
        )}
      </header>
      {marked.pages.length > 0 ? (
        <RouteDrawing marked={marked} at={play.at} />
      ) : (
        <Empty title="Nothing to draw">This circuit has no page; the moves stand beside.</Empty>
      )}
      <RoutePlayer count={steps.length} play={play} lengths={lengths} setPlay={setPlay}>
        <p role="status">
          {step ? (
            <>
              <b>
                Move {step.number}: {step.words}
              </b>
              {step.seen === "" ? "" : `. ${step.seen}`}. {minutesText(step.total)} so far
              {step.off.length === 0 ? "" : `; off: ${step.off.join(", ")}`}.
            </>
          ) : (
            <b>Before the first move: all at rest, all trim on.</b>
          )}
        </p>
      </RoutePlayer>
      <RouteSteps
        marked={marked}
        at={play.at}
        go={(at) => setPlay(stepped({ ...play, isPlaying: false }, at - play.at, lengths))}
      />
    </main>
  );
}
