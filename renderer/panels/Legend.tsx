import { useApp } from "../state/AppContext.tsx";
import { countsNow } from "../state/views.ts";
import { LegendKey } from "./LegendKey.tsx";
import { Popover } from "./Popover.tsx";
import { StateGlyph } from "./StateGlyph.tsx";
import { useRoom } from "./useRoom.ts";

/** Most states whose words stand in the status line of a narrow window. */
const MOST_WORDS_NARROW = 3;

/** The key to the drawing: the states present on the page with their counts; a button where there is no room for words. */
export function Legend() {
  const { width } = useRoom();
  const { length: count } = useApp(countsNow);
  if (count === 0) return null;
  const isFolded = width === "slim" || (width === "narrow" && count > MOST_WORDS_NARROW);
  return isFolded ? <FoldedKeys /> : <Keys className={count > 5 ? "legend is-long" : "legend"} />;
}

function Keys({ className }: { readonly className: string }) {
  const counts = useApp(countsNow);
  return (
    <ul className={className} aria-label="Wires on this page by state">
      {counts.map((count) => (
        <LegendKey key={count.key} count={count} />
      ))}
    </ul>
  );
}

function FoldedKeys() {
  const counts = useApp(countsNow);
  return (
    <Popover
      label="Key: wires on this page by state"
      className="count"
      place="above"
      button={
        <>
          {counts
            .filter(({ key }) => key !== "always-fed")
            .slice(0, 3)
            .map(({ key, state }) => (
              <StateGlyph key={key} state={state} size={14} />
            ))}
          Key
        </>
      }
    >
      {() => <Keys className="legend is-column" />}
    </Popover>
  );
}
