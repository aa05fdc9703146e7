import { type Bar, depthOf } from "./bars.ts";

/** Height of the plain row and of each level below it, and the middle of the circles, pixels. */
const ROW = 48;
const LEVEL = 10;
const MIDDLE = ROW / 2;
/** How far from the middle of the circles the highest level lies. */
const BELOW = 18;

/** Height of a row with these bars, pixels. */
export function heightOf(bars: readonly Bar[]): number {
  return ROW + LEVEL * depthOf(bars);
}

/** The bars of a row behind its circles; those between the chosen one and its partners are dotted. */
export function Bars({
  bars,
  count,
  isOffered,
}: {
  readonly bars: readonly Bar[];
  readonly count: number;
  readonly isOffered: (bar: Bar) => boolean;
}) {
  const at = (column: number): string => `${(100 * (column + 0.5)) / count}%`;
  return (
    <svg className="chart-bars" height={heightOf(bars)} aria-hidden="true">
      {bars.map((bar) => {
        const { from, to, level } = bar;
        const y = level === 0 ? MIDDLE : MIDDLE + BELOW + LEVEL * (level - 1);
        return (
          <g key={`${from} ${to}`} className={isOffered(bar) ? "chart-bar is-offered" : "chart-bar"}>
            <line x1={at(from)} y1={y} x2={at(to)} y2={y} />
            {level > 0 && <line x1={at(from)} y1={MIDDLE} x2={at(from)} y2={y} />}
            {level > 0 && <line x1={at(to)} y1={MIDDLE} x2={at(to)} y2={y} />}
          </g>
        );
      })}
    </svg>
  );
}
