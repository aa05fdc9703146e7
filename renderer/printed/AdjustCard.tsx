import { useEffect, useRef } from "react";
import type { Page, Underlay } from "../../core/circuit/circuit.ts";
import { underlayAt } from "../../core/circuit/underlays.ts";
import { boxAround } from "../../core/drawing/projection.ts";
import { apply } from "../../core/edit/edit.ts";
import { SelectChoice } from "../panels/Choice.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { type Adjusting, benchOf } from "../state/state.ts";
import { circuitNow } from "../state/views.ts";
import { takenBy } from "./adjusting.ts";
import { layOf } from "./lay.ts";
import { usePictures } from "./PicturesContext.tsx";
import { PAPERS_OFFERED, paperChosen } from "./paperChosen.ts";
import { useTake } from "./useTake.ts";

const WORDS: Readonly<Record<Adjusting["how"], { readonly title: string; readonly words: string }>> = {
  lay: {
    title: "Move and scale",
    words:
      "Drag the page to move it, a corner to scale it, or click the handle and then where it goes; with Shift that corner moves alone. Arrow keys move what has the focus, with Shift ten times as far; + and - scale.",
  },
  square: {
    title: "Make square",
    words:
      "Put each handle on the corner of the paper in the photograph, or on four spots that make a rectangle: drag it, or click it and then the spot. Below it is shown as it will lie.",
  },
  crop: {
    title: "Crop",
    words:
      "Drag the corners to what you want to keep, or click a corner and then where it goes. The menu of the page brings back what was cut off.",
  },
};

/** What is being done with a printed page, how it will be, and the two ways out of it. */
export function AdjustCard({ adjusting }: { readonly adjusting: Adjusting }) {
  const { dispatch } = useAppStore();
  const circuit = useApp(circuitNow);
  const { take, leave } = useTake();
  const lying = circuit && underlayAt(circuit, adjusting.underlay);
  if (!lying) return null;
  const { title, words } = WORDS[adjusting.how];
  return (
    <section
      className="circuit-form adjust-card"
      aria-label={title}
      onKeyDown={(event) => {
        if (event.key === "Escape") leave();
      }}
    >
      <h3>
        {title}: {lying.underlay.title}
      </h3>
      <p className="small">{words}</p>
      {adjusting.how === "square" && (
        <>
          <SelectChoice
            title="The paper is"
            now={adjusting.paper ?? "page"}
            choices={PAPERS_OFFERED.map((name) => [name, name === "page" ? "Of a size not known" : name] as const)}
            onChoose={(paper) => dispatch({ do: "adjust", adjusting: { ...adjusting, paper } })}
          />
          <Squared adjusting={adjusting} {...lying} />
        </>
      )}
      <div className="value-acts">
        <button type="button" className="button is-main is-low" onClick={take}>
          Take it (Enter)
        </button>
        <button type="button" className="button is-low" onClick={leave}>
          Leave it (Esc)
        </button>
      </div>
    </section>
  );
}

/** Pixels of the small picture of how it will lie. */
const PREVIEW = 90_000;

interface Previewed {
  readonly adjusting: Adjusting;
  readonly page: Page;
  readonly underlay: Underlay;
}

/** The page as it will lie once it is made square; what cannot be is not shown. */
function Squared({ adjusting, page, underlay }: Previewed) {
  const pictures = usePictures();
  const bench = useApp(benchOf);
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const edit = bench ? takenBy(adjusting, underlay, page, paperChosen(adjusting))(bench) : null;
    const after = bench && edit?.ok ? apply(bench, edit.value) : null;
    const next = after?.ok ? underlayAt(after.value.bench.circuit, underlay.id) : null;
    let isGone = false;
    const { lay } = layOf(next?.underlay ?? underlay, false, PREVIEW);
    void pictures.laid(lay, `${underlay.id} preview`).then((levels) => {
      const { current } = canvas;
      if (!isGone && current && levels) {
        current.width = lay.width;
        current.height = lay.height;
        current.getContext("2d")?.drawImage(levels[0]!, 0, 0);
        const { left, top, right, bottom } = boxAround(next?.underlay.corners ?? underlay.corners);
        current.title = `${Math.round(right - left)} x ${Math.round(bottom - top)} mm`;
      }
      for (const level of levels ?? []) level.close();
    });
    return () => {
      isGone = true;
    };
  }, [pictures, bench, adjusting, underlay, page]);
  return <canvas ref={canvas} className="adjust-preview" role="img" aria-label="The page as it will lie" />;
}
