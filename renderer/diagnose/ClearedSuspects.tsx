import { percent } from "../../core/diagnose/progressWords.ts";
import type { Cleared } from "../../core/diagnose/step.ts";
import { Icon } from "../panels/Icon.tsx";

const MOST_NAMED = 40;

/** What was ruled out, folded: by each reading, and by what works. */
export function ClearedSuspects({ cleared }: { readonly cleared: readonly Cleared[] }) {
  const groups = new Map<number, Cleared[]>();
  for (const each of cleared) groups.set(each.by, [...(groups.get(each.by) ?? []), each]);
  const numbers = [...groups.keys()].sort((one, other) => other - one);
  return (
    <div className="cleared">
      {numbers.map((by) => {
        const own = groups.get(by) ?? [];
        return (
          <details key={by}>
            <summary>
              <Icon name="tick" size={16} />
              <span>{by === 0 ? "Cleared by what works" : `Cleared by reading ${by}`}</span>
              <span className="figures">{own.length}</span>
            </summary>
            <p className="small">
              {own
                .slice(0, MOST_NAMED)
                .map(({ suspect }) => `${suspect.title} (${percent(suspect.probability)})`)
                .join(". ")}
              {own.length > MOST_NAMED ? `. And ${own.length - MOST_NAMED} more.` : "."}
            </p>
          </details>
        );
      })}
    </div>
  );
}
