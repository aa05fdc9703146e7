import { useEffect, useMemo, useReducer, useRef } from "react";
import { useApp } from "../state/AppContext.tsx";
import type { AppState } from "../state/state.ts";
import { layOf, mostPixels } from "./lay.ts";
import { MadePapers } from "./madePapers.ts";
import { usePictures } from "./PicturesContext.tsx";
import { type Paper, papersWanted, strengthOf } from "./papers.ts";

const NO_PAPERS: readonly Paper[] = [];

/**
 * The printed pages under the page in sight, ready to be painted. They are made in a worker; until one is ready it is shown as
 * it was made last, in its new place.
 */
export function usePapers(): readonly Paper[] {
  const pictures = usePictures();
  const circuit = useApp(({ open }) => open?.desk.bench.circuit ?? null);
  const bench = useApp(({ open }) => open?.number ?? 0);
  const page = useApp(({ open }) => open?.page ?? "");
  const adjusting = useApp(({ open }) => open?.adjusting ?? null);
  const isDark = useApp((state: AppState) => state.theme === "dark");
  const [count, show] = useReducer((made: number) => made + 1, 0);
  const kept = useRef(new MadePapers());
  const underlays = circuit?.pages.find(({ id }) => id === page)?.underlays;
  // An edit elsewhere in the circuit leaves the list of printed pages the very same.
  const wanted = useMemo(() => {
    if (!circuit) return [];
    const all = papersWanted(circuit, page, adjusting);
    return all.map(({ underlay, isMoving }) => {
      const { lay, box } = layOf(underlay, isDark, mostPixels(all.length, isMoving));
      // Another circuit may have a printed page of the same id.
      const id = `${bench} ${underlay.id}`;
      return { id, opacity: strengthOf(underlay), lay, box, key: JSON.stringify(lay) };
    });
  }, [underlays, page, adjusting, isDark, bench]);
  useEffect(() => {
    const papers = kept.current;
    papers.keepOf(wanted.map(({ id }) => id));
    for (const { id, lay, key } of wanted) {
      if (!papers.asks(id, key)) continue;
      void pictures.laid(lay, id).then((levels) => {
        if (levels && papers.put(id, key, levels)) show();
      });
    }
  }, [pictures, wanted]);
  return useMemo(() => {
    const papers = wanted.flatMap(({ id, opacity, box }): readonly Paper[] => {
      const levels = kept.current.of(id);
      return levels ? [{ id, levels, box, opacity }] : [];
    });
    return papers.length > 0 ? papers : NO_PAPERS;
    // What was made stands behind the count.
  }, [wanted, count]);
}
