import { useEffect, useMemo, useRef, useState } from "react";
import { useApp } from "../state/AppContext.tsx";
import type { AppState } from "../state/state.ts";
import { layOf, MOST_PIXELS, PREVIEW_PIXELS } from "./lay.ts";
import { usePictures } from "./PicturesContext.tsx";
import { type Paper, papersWanted, strengthOf } from "./papers.ts";

interface Made {
  readonly key: string;
  readonly levels: readonly ImageBitmap[];
}

const NO_PAPERS: readonly Paper[] = [];

/**
 * The printed pages under the page in sight, ready to be painted. They are made in a worker; until one is ready it is shown as
 * it was made last, in its new place.
 */
export function usePapers(): readonly Paper[] {
  const pictures = usePictures();
  const circuit = useApp(({ open }) => open?.desk.bench.circuit ?? null);
  const page = useApp(({ open }) => open?.page ?? "");
  const adjusting = useApp(({ open }) => open?.adjusting ?? null);
  const isDark = useApp((state: AppState) => state.theme === "dark");
  const [made, setMade] = useState<ReadonlyMap<string, Made>>(new Map());
  const asked = useRef(new Map<string, string>());
  const underlays = circuit?.pages.find(({ id }) => id === page)?.underlays;
  // An edit elsewhere in the circuit leaves the list of printed pages the very same.
  const wanted = useMemo(() => {
    if (!circuit) return [];
    return papersWanted(circuit, page, adjusting).map(({ underlay, isMoving }) => {
      const { lay, box } = layOf(underlay, isDark, isMoving ? PREVIEW_PIXELS : MOST_PIXELS);
      return { id: underlay.id, opacity: strengthOf(underlay), lay, box, key: JSON.stringify(lay) };
    });
  }, [underlays, page, adjusting, isDark]);
  useEffect(() => {
    for (const { id, lay, key } of wanted) {
      if (asked.current.get(id) === key) continue;
      asked.current.set(id, key);
      void pictures.laid(lay, id).then((levels) => {
        if (levels && asked.current.get(id) === key) setMade((before) => new Map(before).set(id, { key, levels }));
        else for (const level of levels ?? []) level.close();
      });
    }
  }, [pictures, wanted]);
  return useMemo(() => {
    const papers = wanted.flatMap(({ id, opacity, box }): readonly Paper[] => {
      const ready = made.get(id);
      return ready ? [{ id, levels: ready.levels, box, opacity }] : [];
    });
    return papers.length > 0 ? papers : NO_PAPERS;
  }, [wanted, made]);
}
