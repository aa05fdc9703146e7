import { useMemo, useState } from "react";
import type { Asked, Circuit, Scene } from "../../core/circuit/circuit.ts";
import { askInScene } from "../../core/edit/commands/askInScene.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { askable } from "../../core/lesson/questions.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { useAsked } from "../editor/useAsk.ts";
import { SelectChoice } from "../panels/Choice.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { Opens } from "./Opens.tsx";
import { useFocusBack } from "./useFocusBack.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly scene: Scene;
  /** Its place among the scenes, counted from 0. */
  readonly at: number;
}

/** Has a scene ask something more: a button, and once it is pressed what can be asked there. */
export function AskInScene(shown: Shown) {
  return <Opens words="Ask the class something here" form={(close) => <AskForm {...shown} close={close} />} />;
}

/** A point, that which is chosen on the drawing first, and a button for each thing that can be asked of it in the scene. */
function AskForm({ circuit, scene, at, close }: Shown & { readonly close: () => void }) {
  const { dispatch } = useAppStore();
  const { ask, trouble } = useAsked();
  const focusBack = useFocusBack();
  const wiring = wiringOf(circuit);
  const all = useMemo(() => askable(wiring, scene.condition), [wiring, scene.condition]);
  const points = useMemo(() => [...new Set(all.map(({ point }) => point))], [all]);
  const chosen = useApp(({ open }) => (open?.chosen?.is === "point" ? open.chosen.id : null));
  const [picked, setPicked] = useState("");
  const now = [chosen, picked].find((point) => point !== null && points.includes(point)) ?? points[0];
  const leave = (): void => {
    focusBack();
    close();
  };
  return (
    <section
      className="circuit-form"
      aria-label={`Ask something in ${scene.label}`}
      onKeyDown={(event) => {
        if (event.key === "Escape") leave();
      }}
    >
      {now === undefined ? (
        <p className="small">Nothing can be asked here: no point has a plain state that may be probed.</p>
      ) : (
        <>
          <SelectChoice
            title="About which point"
            now={now}
            onChoose={(point) => {
              setPicked(point);
              dispatch({ do: "find-named", id: point });
            }}
            choices={points.map((point) => [point, point] as const)}
            isFirst
          />
          <div className="class-acts">
            {all
              .filter(({ point }) => point === now)
              .map((asked) => (
                <button
                  type="button"
                  key={JSON.stringify(asked)}
                  className="button is-low"
                  onClick={() => {
                    if (ask((bench) => askInScene(bench, at, asked)) === null) leave();
                  }}
                >
                  {askWords(asked)}
                </button>
              ))}
          </div>
        </>
      )}
      <Trouble words={trouble} />
      <div className="value-acts">
        <button type="button" className="button is-low is-quiet" onClick={leave}>
          Leave it
        </button>
      </div>
    </section>
  );
}

/** What a button asks of the point that is named above it. */
function askWords(asked: Asked): string {
  if (asked.asks === "state") return "Ask its state";
  if (asked.asks === "lamp") return `Ask how a ${asked.lamp} burns, ${post(asked.lampTo)}`;
  return `Ask its volts, black on ${post(asked.black)}`;
}

function post(lead: string): string {
  return lead.replace("battery -", "battery −");
}
