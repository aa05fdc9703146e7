import { useEffect, useState } from "react";
import type { Refusal } from "../../core/base/outcome.ts";
import type { Source } from "./source.ts";
import { sourceOf } from "./sourceOf.ts";

/** What became of files that were given: those that can be read, and why others cannot. */
export interface Sources {
  readonly sources: readonly Source[];
  readonly refused: readonly { readonly name: string; readonly refusal: Refusal }[];
  readonly isReading: boolean;
}

const NOTHING: Sources = { sources: [], refused: [], isReading: true };

/** Reads files one after another, and lets go of them when they are no longer shown. */
export function useSources(files: readonly File[]): Sources {
  const [read, setRead] = useState<Sources>(NOTHING);
  useEffect(() => {
    let isGone = false;
    const opened: Source[] = [];
    const readAll = async (): Promise<void> => {
      for (const file of files) {
        const source = await sourceOf(file);
        if (source.ok) opened.push(source.value);
        if (isGone) break;
        setRead((before) =>
          source.ok
            ? { ...before, sources: [...before.sources, source.value] }
            : { ...before, refused: [...before.refused, { name: file.name, refusal: source.refusal }] },
        );
      }
      if (isGone) for (const source of opened) source.close();
      else setRead((before) => ({ ...before, isReading: false }));
    };
    setRead(NOTHING);
    void readAll();
    return () => {
      isGone = true;
      for (const source of opened) source.close();
    };
  }, [files]);
  return read;
}
