import type { Circuit } from "../../core/circuit/circuit.ts";
import { type Along, followed } from "../canvas/following.ts";
import { useKeyOf } from "../keys/useKeyOf.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import type { Thing } from "../state/state.ts";
import { liveShown } from "../state/views.ts";

interface Shown {
  readonly circuit: Circuit;
  readonly thing: Thing;
  readonly close: () => void;
}

const WAYS = [
  ["back", "Follow to the feed", "follow-back"],
  ["onward", "Follow to the return", "follow-on"],
] as const;

/** Goes one step along the circuit from a thing, over to another page where a page link leads there. */
export function FollowActs({ circuit, thing, close }: Shown) {
  const keyOf = useKeyOf();
  const { dispatch } = useAppStore();
  const live = useApp(liveShown);
  if (!live) return null;
  const step = (way: Along) => followed({ circuit, live, selection: thing }, way);
  return (
    <div className="value-acts">
      {WAYS.map(([way, words, key]) => {
        const next = step(way);
        return (
          <button
            key={way}
            type="button"
            className="button is-low"
            disabled={!next?.to}
            title={next?.to ? `${next.said} Again: ${keyOf(key)}` : next?.said}
            onClick={() => {
              close();
              if (next?.to) dispatch({ do: "find", thing: next.to });
              if (next) dispatch({ do: "say", words: next.said });
            }}
          >
            {words}
          </button>
        );
      })}
    </div>
  );
}
