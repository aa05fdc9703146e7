import { useAppStore } from "../state/AppContext.tsx";
import type { Trace } from "../state/traces.ts";
import { signed } from "../words/figures.ts";

/** Size of the picture, and room for the line's own width, pixels. */
const [WIDTH, HEIGHT, EDGE] = [120, 40, 3];

interface Shown {
  readonly id: string;
  readonly trace: Trace;
  readonly unit: string;
}

/** The last figures as a stepped line, with the lowest and the highest since it was begun; a press begins anew. */
export function TraceLine({ id, trace, unit }: Shown) {
  const { dispatch } = useAppStore();
  const { values, least, most } = trace;
  const [low, high] = [signed(least, 2), signed(most, 2)];
  return (
    <div className="trace">
      <svg width={WIDTH} height={HEIGHT} aria-hidden="true">
        <polyline points={stepped(values)} />
      </svg>
      <p className="small figures">
        min {low} · max {high}&nbsp;{unit}
      </p>
      <button type="button" className="button is-low" onClick={() => dispatch({ do: "begin-trace", instrument: id })}>
        Reset min and max
      </button>
    </div>
  );
}

function stepped(values: readonly number[]): string {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const span = most - least || 1;
  const y = (value: number): number => HEIGHT - EDGE - ((value - least) / span) * (HEIGHT - 2 * EDGE);
  const step = (WIDTH - 2 * EDGE) / values.length;
  return values
    .flatMap((value, index) => [
      [EDGE + index * step, y(value)],
      [EDGE + (index + 1) * step, y(value)],
    ])
    .map(([left, top]) => `${left!.toFixed(1)},${top!.toFixed(1)}`)
    .join(" ");
}
