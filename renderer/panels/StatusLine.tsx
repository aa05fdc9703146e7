import { useApp } from "../state/AppContext.tsx";
import { benchOf } from "../state/state.ts";
import { conditionPhrase } from "../words/condition.ts";
import { Legend } from "./Legend.tsx";
import { LooseEnds } from "./LooseEnds.tsx";
import { SheetZoom } from "./SheetZoom.tsx";

/** The condition in words, the key to the drawing with its counts, loose ends and zoom. */
export function StatusLine() {
  const phrase = useApp((state) => {
    const bench = benchOf(state);
    return bench ? conditionPhrase(bench.circuit, bench.condition) : "";
  });
  return (
    <footer className="status">
      <span className="status-condition" title={phrase}>
        {phrase}
      </span>
      <Legend />
      <span className="status-end">
        <LooseEnds />
        <SheetZoom />
      </span>
    </footer>
  );
}
