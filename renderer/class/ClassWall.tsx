import { type CSSProperties, useEffect, useRef } from "react";
import { CLASS_WORDS } from "../../core/lesson/wall.ts";
import type { ClassAct } from "./acts.ts";
import type { ClassRoom, ClassSheet, ClassShown } from "./classShown.ts";
import { SvgText } from "./SvgText.tsx";
import { Unparted } from "./Unparted.tsx";
import { useLit } from "./useLit.ts";
import { WallActs } from "./WallActs.tsx";
import { WallQuestion } from "./WallQuestion.tsx";

interface Shown {
  readonly shown: ClassShown;
  /** Is told what room there is, at first and whenever it is another. */
  readonly onRoom: (room: ClassRoom) => void;
  readonly onAct: (act: ClassAct) => void;
}

/** What is on the wall: the scene, the drawing, and its state in words. Nothing on it is for the instructor alone. */
export function ClassWall({ shown, onRoom, onAct }: Shown) {
  const { theme, words, sheet, isBlank } = shown;
  const wall = useRef<HTMLElement>(null);
  const drawing = useRef<HTMLDivElement>(null);
  const told = useRef(onRoom);
  told.current = onRoom;
  useEffect(() => {
    const tell = (): void => {
      const { clientWidth: width = 0, clientHeight: height = 0 } = drawing.current ?? {};
      const screen = wall.current?.clientHeight ?? 0;
      if (width > 0 && height > 0) told.current({ width, height, screen });
    };
    const watch = new ResizeObserver(tell);
    for (const element of [wall.current, drawing.current]) if (element) watch.observe(element);
    return () => watch.disconnect();
  }, []);
  const style = { "--words": `calc(100vh * ${words} / ${CLASS_WORDS.lines})` } as CSSProperties;
  return (
    <main className="wall" data-theme={theme} style={style} ref={wall}>
      <header className="wall-head" hidden={sheet === null}>
        <h1>
          <Unparted words={sheet?.title ?? ""} />
        </h1>
        <p className="wall-place">{sheet?.place}</p>
      </header>
      <div className="wall-drawing" ref={drawing}>
        {sheet && <Drawing shown={shown} sheet={sheet} />}
        {!sheet && !isBlank && <p className="wall-none">No circuit is open.</p>}
      </div>
      {sheet?.question && <WallQuestion question={sheet.question} />}
      {sheet && !sheet.question && <Strip sheet={sheet} onAct={onAct} />}
      {isBlank && <p className="unseen">The screen is blank.</p>}
    </main>
  );
}

function Drawing({ shown, sheet }: { readonly shown: ClassShown; readonly sheet: ClassSheet }) {
  const dark = sheet.picture?.dark ?? null;
  const isLit = useLit(dark !== null, shown.isStill);
  if (sheet.picture === null) return <p>There is nothing on this page yet.</p>;
  return (
    <>
      <SvgText className="wall-sheet" text={sheet.picture.lit} isHidden={!isLit} />
      {dark !== null && <SvgText className="wall-sheet" text={dark} isHidden={isLit} />}
    </>
  );
}

function Strip({ sheet, onAct }: { readonly sheet: ClassSheet } & Pick<Shown, "onAct">) {
  const { isCovered, said, caption, key, controls, hasScenes } = sheet;
  return (
    <section className="wall-strip" aria-label="In words">
      <div className="wall-said" aria-live="polite">
        {isCovered && <h2>Say each wire's state before it is shown.</h2>}
        {said !== "" && (
          <h2>
            <Unparted words={said} />
          </h2>
        )}
        {caption !== "" && (
          <p className="wall-caption">
            <Unparted words={caption} />
          </p>
        )}
      </div>
      <div className="wall-last">
        <ul className="wall-key">
          {key.map(({ words, sample }) => (
            <li key={words}>
              <SvgText className="wall-sample" text={sample} />
              {words}
            </li>
          ))}
        </ul>
        <WallActs controls={controls} hasScenes={hasScenes} onAct={onAct} />
      </div>
    </section>
  );
}
