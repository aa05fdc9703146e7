import type { Circuit } from "../../core/circuit/circuit.ts";
import { percent } from "../../core/diagnose/progressWords.ts";
import type { Reading } from "../../core/diagnose/reading.ts";
import type { Cleared, Suspect } from "../../core/diagnose/step.ts";
import { Icon } from "../panels/Icon.tsx";
import { valueText } from "../words/reading.ts";

const MOST_NAMED = 40;

interface Shown {
  readonly circuit: Circuit;
  readonly readings: readonly Reading[];
  readonly cleared: readonly Cleared[];
  /** Shares before the last reading; null where nothing is known of them. */
  readonly before: ReadonlyMap<string, number> | null;
}

/** What was ruled out, folded: by each reading, with where and what it was, and by what works. */
export function ClearedSuspects({ circuit, readings, cleared, before }: Shown) {
  const groups = new Map<number, Cleared[]>();
  for (const each of cleared) groups.set(each.by, [...(groups.get(each.by) ?? []), each]);
  const numbers = [...groups.keys()].sort((one, other) => other - one);
  return (
    <div className="cleared">
      {numbers.map((by) => {
        const own = groups.get(by) ?? [];
        const reading = readings[by - 1];
        return (
          <details key={by}>
            <summary>
              <Icon name="tick" size={16} />
              <span>
                {by === 0 ? "Cleared by what works" : `Cleared by reading ${by}`}
                {reading && (
                  <span className="cleared-by small figures">
                    {reading.red} {valueText(circuit, reading)}
                  </span>
                )}
              </span>
              <span className="figures">{own.length}</span>
            </summary>
            <p className="small">
              {own
                .slice(0, MOST_NAMED)
                .map(({ suspect }) => `${suspect.title}${wasText(before?.get(suspect.id) ?? 0)}`)
                .join(". ")}
              {own.length > MOST_NAMED ? `. And ${own.length - MOST_NAMED} more.` : "."}
            </p>
          </details>
        );
      })}
    </div>
  );
}

/** What a suspect was before the last reading; nothing for one that was as good as cleared. */
function wasText(share: Suspect["probability"]): string {
  return share < 0.005 ? "" : `, was ${percent(share)}`;
}
