import { useEffect, useRef, useState } from "react";
import { Choice, SelectChoice } from "../panels/Choice.tsx";
import { Working } from "../panels/Working.tsx";
import { useApp } from "../state/AppContext.tsx";
import type { HandinMarked } from "./deskQuestion.ts";
import { flagName, momentText } from "./handins.ts";
import { useHandins } from "./useHandins.ts";

/** Pages that are offered side by side; more of them in a list that folds. */
const MOST_SIDE_BY_SIDE = 4;

interface Shown {
  readonly marked: HandinMarked;
  /** Number of the move after which the drawing is shown. */
  readonly at: number;
}

/** The drawing after a move. It goes to the page on which the move is seen; another one may be looked at until the next move. */
export function RouteDrawing({ marked, at }: Shown) {
  const { desk, ask } = useHandins();
  const palette = useApp(({ theme }) => theme);
  const look = useApp(({ settings }) => settings.look);
  const { id, pages, pageOf } = marked;
  const [chosen, setChosen] = useState<{ readonly at: number; readonly page: string } | null>(null);
  const [isLarge, setLarge] = useState(false);
  const page = (chosen?.at === at ? chosen.page : pageOf[at]) ?? "";
  const wanted = momentText({ handin: id ?? "", step: at, page, palette, look });
  useEffect(
    () => ask({ act: "draw", moment: { handin: id ?? "", step: at, page, palette, look } }),
    [ask, id, at, page, palette, look],
  );
  const { picture } = desk;
  const reading = marked.steps[at - 1]?.reading ?? null;
  const PageChoice = pages.length > MOST_SIDE_BY_SIDE ? SelectChoice : Choice;
  return (
    <section className="route-drawing" aria-label="The drawing after this move">
      <div className="route-acts">
        {pages.length > 1 && (
          <PageChoice
            title="Page"
            now={page}
            choices={pages.map(({ id: each, title }) => [each, title] as const)}
            onChoose={(next) => setChosen({ at, page: next })}
          />
        )}
        <button type="button" className="button is-low" onClick={() => setLarge(!isLarge)}>
          {isLarge ? "Whole page" : "Larger"}
        </button>
      </div>
      {picture ? (
        <Picture svg={picture.svg} isOld={picture.of !== wanted} isLarge={isLarge} reading={reading} />
      ) : (
        <Working words="Making the drawing" />
      )}
    </section>
  );
}

interface PictureShown {
  readonly svg: string;
  readonly isOld: boolean;
  readonly isLarge: boolean;
  /** Number of what this move read; null where it read nothing. */
  readonly reading: number | null;
}

/** SVG text set into the page. It is read as XML, in which nothing runs. What was just read is brought into sight. */
function Picture({ svg, isOld, isLarge, reading }: PictureShown) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const { documentElement } = new DOMParser().parseFromString(svg, "image/svg+xml");
    place.current?.replaceChildren(document.importNode(documentElement, true));
  }, [svg]);
  useEffect(() => {
    if (!isLarge || isOld || reading === null) return;
    const flag = place.current?.querySelector(`[data-of="${flagName(reading)}"]`);
    flag?.scrollIntoView({ block: "center", inline: "center" });
  }, [isLarge, isOld, reading]);
  return <div className={`route-picture${isOld ? " is-old" : ""}${isLarge ? " is-large" : ""}`} ref={place} />;
}
