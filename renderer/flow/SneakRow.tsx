import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Sneak } from "../../core/diagnose/flow/sneaks.ts";
import { openingsSaid, pathSaid, sneakSaid } from "../../core/diagnose/flow/words.ts";
import { setUpWith } from "../../core/edit/commands/setUpWith.ts";
import { faultText } from "../../core/live/fault.ts";
import { Icon } from "../panels/Icon.tsx";
import { useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { counted, unbroken } from "../words/figures.ts";

interface Story {
  readonly circuit: Circuit;
  /** The sneak paths of one opening, what matters most first. */
  readonly story: readonly Sneak[];
}

/** The sneak paths of one opening: the one that matters most, and the others folded. */
export function SneakStory({ circuit, story }: Story) {
  const [first, ...others] = story;
  if (!first) return null;
  return (
    <li className="sneak-story">
      <SneakRow circuit={circuit} sneak={first} />
      {others.length > 0 && (
        <details className="sneak-more">
          <summary className="small">
            <Icon name="onward" size={16} />
            {counted(others.length, "more position")} with {openingsSaid(first)}
          </summary>
          {others.map((sneak, index) => (
            <SneakRow key={index} circuit={circuit} sneak={sneak} />
          ))}
        </details>
      )}
    </li>
  );
}

/** One sneak path in words; pressed, the drawing is set to just that position and opening, and the load is chosen. */
function SneakRow({ circuit, sneak }: { readonly circuit: Circuit; readonly sneak: Sneak }) {
  const { dispatch } = useAppStore();
  const make = useMake();
  const reached = sneak.loads[0]?.part ?? sneak.wires[0]?.wire;
  const show = (): void => {
    const faults = (sneak.openings[0]?.faults ?? []).map(faultText);
    make((bench) => setUpWith(bench, sneak.condition, faults));
    if (reached !== undefined) dispatch({ do: "find-named", id: reached });
  };
  return (
    <div className="sneak">
      <p>{unbroken(sneakSaid(circuit, sneak))}</p>
      <p className="caption">{pathSaid(sneak.path)}</p>
      <button type="button" className="button is-quiet is-low" onClick={show}>
        Show it
      </button>
    </div>
  );
}
