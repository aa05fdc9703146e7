import { useEffect, useId, useRef, useState } from "react";
import { sentence } from "../../core/base/words.ts";
import { Trouble } from "../editor/Trouble.tsx";
import { Tick } from "../panels/Tick.tsx";
import { counted } from "../words/figures.ts";
import { pagesText, pagesTyped } from "./pageNumbers.ts";
import type { Source } from "./source.ts";

interface Shown {
  readonly source: Source;
  readonly chosen: readonly number[];
  readonly choose: (pages: readonly number[]) => void;
}

/** The pages of one file, small, each to be ticked; many are chosen faster by their numbers. */
export function PageChooser({ source, chosen, choose }: Shown) {
  const [typed, setTyped] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const id = useId();
  const take = (text: string): void => {
    const pages = pagesTyped(text, source.pages);
    setTrouble(pages.ok ? null : sentence(pages.refusal));
    if (pages.ok) choose(pages.value);
  };
  const tick = (page: number, isOn: boolean): void => {
    const others = chosen.filter((each) => each !== page);
    setTyped(null);
    setTrouble(null);
    choose(isOn ? [...others, page].toSorted((one, other) => one - other) : others);
  };
  return (
    <section className="page-chooser" aria-label={source.name}>
      <header>
        <h3>{source.name}</h3>
        {source.pages > 1 && (
          <label className="pages-typed small" htmlFor={id}>
            {counted(source.pages, "page")}; bring in
            <span className="field">
              <input
                id={id}
                value={typed ?? pagesText(chosen)}
                placeholder="3, 5-8"
                autoComplete="off"
                onChange={(event) => {
                  setTyped(event.target.value);
                  take(event.target.value);
                }}
                onBlur={() => trouble === null && setTyped(null)}
              />
            </span>
          </label>
        )}
      </header>
      <Trouble words={trouble} />
      <ul className="page-tiles">
        {Array.from({ length: source.pages }, (_, index) => index + 1).map((page) => (
          <PageTile key={page} source={source} page={page} isOn={chosen.includes(page)} tick={tick} />
        ))}
      </ul>
    </section>
  );
}

/** Longer side of a small picture, pixels of the screen. */
const TILE = 240;

interface Tile {
  readonly source: Source;
  readonly page: number;
  readonly isOn: boolean;
  readonly tick: (page: number, isOn: boolean) => void;
}

/** One page, painted when it first comes into sight. */
function PageTile({ source, page, isOn, tick }: Tile) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const box = canvas.current;
    if (!box) return;
    const watcher = new IntersectionObserver(([seen]) => {
      if (!seen?.isIntersecting) return;
      watcher.disconnect();
      // A page that cannot be painted small says so when it is brought in.
      source.paint(page, box, TILE).catch(() => undefined);
    });
    watcher.observe(box);
    return () => watcher.disconnect();
  }, [source, page]);
  return (
    <li>
      {/* biome-ignore lint/a11y/noLabelWithoutControl: the box is inside */}
      <label className={isOn ? "page-tile is-on" : "page-tile"}>
        <canvas ref={canvas} width={TILE} height={Math.round(TILE * 0.7)} />
        <span>
          <Tick isOn={isOn} onChange={(on) => tick(page, on)} />
          <span className="small figures">{source.pages === 1 ? "Bring it in" : `Page ${page}`}</span>
        </span>
      </label>
    </li>
  );
}
