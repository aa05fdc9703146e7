import { useApp } from "../state/AppContext.tsx";
import { benchOf } from "../state/state.ts";
import { countsNow } from "../state/views.ts";
import { conditionPhrase } from "../words/condition.ts";
import { LegendKey } from "./LegendKey.tsx";
import { LooseEnds } from "./LooseEnds.tsx";
import { SheetZoom } from "./SheetZoom.tsx";

/** The condition in words, the key to the drawing with its counts, loose ends and zoom. */
export function StatusLine() {
  const phrase = useApp((state) => {
    const bench = benchOf(state);
    return bench ? conditionPhrase(bench.circuit, bench.condition) : "";
  });
  const counts = useApp(countsNow);
  return (
    <footer className="status">
      <span className="status-condition" title={phrase}>
        {phrase}
      </span>
      <ul className={counts.length > 5 ? "legend is-long" : "legend"} aria-label="Wires on this page by state">
        {counts.map((count) => (
          <LegendKey key={count.key} count={count} />
        ))}
      </ul>
      <span className="status-end">
        <LooseEnds />
        <SheetZoom />
      </span>
    </footer>
  );
}
