import type { Circuit } from "../../core/circuit/circuit.ts";
import { groupedSneaks } from "../../core/diagnose/flow/sneakGroups.ts";
import { openingsSaid, SNEAK_GROUPS } from "../../core/diagnose/flow/words.ts";
import { Icon } from "../panels/Icon.tsx";
import { Working } from "../panels/Working.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { sneaksNow } from "../state/views.ts";
import { counted } from "../words/figures.ts";
import { SneakStory } from "./SneakRow.tsx";

/** Every way current can run against the drawn direction with one place open, what runs that should not first, the rest folded. */
export function SneakPaths({ circuit }: { readonly circuit: Circuit }) {
  const { dispatch } = useAppStore();
  const isSeeking = useApp(({ open }) => open?.isSeeking === true);
  const { answer, isOld, trouble } = useApp(sneaksNow);
  return (
    <section aria-label="Sneak paths">
      <h2 className="place-name">Sneak paths</h2>
      {!isSeeking && (
        <>
          <p className="small">
            Which way can current run against the drawn direction, with one ground, fuse, splice leg or shared wire
            open?
          </p>
          <p>
            <button type="button" className="button" onClick={() => dispatch({ do: "seek-sneaks" })}>
              Search every position
            </button>
          </p>
        </>
      )}
      {trouble !== null && <p className="error">Sneak paths could not be worked out: {trouble}</p>}
      {isSeeking && isOld && <Working words="Opening one place after the other in every position" />}
      {isSeeking && !isOld && answer && (
        <>
          <p className="small">
            {answer.sneaks.length === 0 ? "None" : counted(answer.sneaks.length, "sneak path")} with{" "}
            {counted(answer.all - 1, "opening")} in {counted(answer.positions, "position")}.
          </p>
          {groupedSneaks(answer.sneaks).map(({ group, stories }, index) => (
            <details key={group} className="sneak-group" open={index === 0}>
              <summary>
                <Icon name="onward" size={16} />
                {SNEAK_GROUPS[group]}
                <span className="figures">{stories.flat().length}</span>
              </summary>
              <ol>
                {stories.map((story) => (
                  <SneakStory key={openingsSaid(story[0]!)} circuit={circuit} story={story} />
                ))}
              </ol>
            </details>
          ))}
        </>
      )}
    </section>
  );
}
