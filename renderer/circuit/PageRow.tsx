import { useState } from "react";
import type { Circuit, Page } from "../../core/circuit/circuit.ts";
import { removePage } from "../../core/edit/commands/removePage.ts";
import { reorderPage } from "../../core/edit/commands/reorderPage.ts";
import { retitlePage } from "../../core/edit/commands/retitlePage.ts";
import { InPlace } from "../editor/InPlace.tsx";
import { useAsk } from "../editor/useAsk.ts";
import { useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { PageSize } from "./PageSize.tsx";
import { standingOn } from "./pages.ts";
import { RemovePage } from "./RemovePage.tsx";
import { type RowAct, RowMenu } from "./RowMenu.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly page: Page;
  /** Its place among the pages, counted from 0. */
  readonly at: number;
}

/** One page: its number and title, its size, and what can be done with it. */
export function PageRow({ circuit, page, at }: Shown) {
  const { dispatch } = useAppStore();
  const make = useMake();
  const ask = useAsk();
  const [isGoing, setIsGoing] = useState(false);
  const { id, title } = page;
  const count = circuit.pages.length;
  const move = (to: number) => (): void => make((bench) => reorderPage(bench, id, to));
  const remove = (): void => {
    if (standingOn(circuit, id).length > 0) setIsGoing(true);
    else make((bench) => removePage(bench, id));
  };
  const acts: readonly RowAct[] = [
    { icon: "onward", words: "Show it", act: () => dispatch({ do: "show-page", page: id }) },
    { icon: "up", words: "Move up", act: move(at - 1), isOff: at === 0 ? "It is the first" : undefined },
    { icon: "down", words: "Move down", act: move(at + 1), isOff: at === count - 1 ? "It is the last" : undefined },
    { icon: "bin", words: "Remove", act: remove, isOff: count === 1 ? "It is the only page" : undefined },
  ];
  return (
    <li className="circuit-row">
      <div className="circuit-row-head">
        <span className="tab-number figures">{at + 1}</span>
        <InPlace
          name={`Title of page ${at + 1}`}
          value={title}
          className="is-wide"
          take={(typed) => ask((bench) => retitlePage(bench, id, typed))}
        />
        <RowMenu label={`More for page ${title}`} acts={acts} />
      </div>
      <PageSize page={page} />
      {isGoing && <RemovePage circuit={circuit} page={page} close={() => setIsGoing(false)} />}
    </li>
  );
}
