import { useState } from "react";
import type { Page } from "../../core/circuit/circuit.ts";
import { type ArrangeWhat, crowdedParts } from "../../core/edit/arranging.ts";
import { removePage } from "../../core/edit/commands/removePage.ts";
import { reorderPage } from "../../core/edit/commands/reorderPage.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { circuitNow } from "../state/views.ts";
import { counted } from "../words/figures.ts";
import { MergePage } from "./MergePage.tsx";
import { standingOn } from "./pages.ts";
import { RemovePage } from "./RemovePage.tsx";
import { ActList, type RowAct } from "./RowMenu.tsx";

interface Shown {
  readonly page: Page;
  readonly rename: () => void;
  readonly close: () => void;
}

/** What can be done with the page of a tab. Before a page goes on which parts stand, it asks where they are to go; before one is merged, into which. */
export function PageMenu({ page, rename, close }: Shown) {
  const make = useMake();
  const { dispatch } = useAppStore();
  const circuit = useApp(circuitNow);
  const [isGoing, setIsGoing] = useState(false);
  const [isMerging, setIsMerging] = useState(false);
  if (!circuit) return null;
  if (isGoing) return <RemovePage circuit={circuit} page={page} close={close} />;
  if (isMerging) return <MergePage circuit={circuit} page={page} close={close} />;
  const { id } = page;
  const at = circuit.pages.indexOf(page);
  const last = circuit.pages.length - 1;
  const move = (to: number) => (): void => {
    close();
    make((bench) => reorderPage(bench, id, to));
  };
  const remove = (): void => {
    const isEmpty = standingOn(circuit, id).length === 0;
    setIsGoing(!isEmpty);
    if (!isEmpty) return;
    close();
    make((bench) => removePage(bench, id));
  };
  const arrange = (what: ArrangeWhat) => (): void => {
    close();
    dispatch({ do: "arrange", what });
  };
  const crowded = crowdedParts(circuit, id).length;
  const acts: readonly RowAct[] = [
    { icon: "rename", words: "Rename", act: rename },
    {
      icon: "arrange",
      words: "Arrange the page",
      act: arrange("page"),
      isOff: standingOn(circuit, id).length === 0 ? "Nothing stands on it" : undefined,
    },
    ...(crowded === 0
      ? []
      : [
          {
            icon: "arrange",
            words: `Arrange ${counted(crowded, "part")} out of place`,
            act: arrange("crowded"),
          } as const,
        ]),
    { icon: "back", words: "Move left", act: move(at - 1), isOff: at === 0 ? "It is the first" : undefined },
    { icon: "onward", words: "Move right", act: move(at + 1), isOff: at === last ? "It is the last" : undefined },
    {
      icon: "across",
      words: "Merge into another page",
      act: () => setIsMerging(true),
      isOff: last === 0 ? "It is the only page" : undefined,
    },
    { icon: "bin", words: "Delete", act: remove, isOff: last === 0 ? "It is the only page" : undefined },
  ];
  return <ActList acts={acts} />;
}
