import { REFUSED_WORDS as WORDS } from "../../core/base/words/window.ts";

/** Tells what was refused, a line for each, but never so many that an attack fills a disk. */
export interface Refusals {
  /** One was refused: for which reason, and what it asked for as far as it may be told. */
  note(reason: number | string, what?: string): void;
  /** Tells how many were left out, if any were. */
  end(): void;
}

const MINUTE_MS = 60_000;
/** Lines told of one minute; the others of it are counted and told in the next line. */
const MOST_LINES = 20;
/** Signs shown of what was asked. */
const MOST_SIGNS = 80;

/** Refusals told through `tell`, each as one line that ends with a break. */
export function refusalsTo(tell: (line: string) => void, now: () => Date): Refusals {
  let began = Number.NEGATIVE_INFINITY;
  let told = 0;
  let left = 0;
  const tellLeft = (): void => {
    if (left > 0) tell(`${WORDS.more.replace("{count}", () => String(left))}\n`);
    left = 0;
  };
  return {
    note: (reason, what = "") => {
      const at = now();
      if (at.getTime() - began >= MINUTE_MS) {
        tellLeft();
        began = at.getTime();
        told = 0;
      }
      if (told >= MOST_LINES) {
        left++;
        return;
      }
      told++;
      const time = at.toISOString().slice(0, 19);
      tell(
        `${WORDS.one.replace("{time}", time).replace("{reason}", `${reason}`)} ${plainLine(what)}`
          .trimEnd()
          .concat("\n"),
      );
    },
    end: tellLeft,
  };
}

/** What a stranger sent, as one short line that moves no cursor and turns no writing: every sign out of the ordinary is a question mark. */
function plainLine(text: string): string {
  const signs = [...text.slice(0, 4 * MOST_SIGNS)];
  const line = signs
    .slice(0, MOST_SIGNS)
    .join("")
    .replace(/[^\u0020-\u007e]/gu, "?");
  return signs.length > MOST_SIGNS ? `${line}...` : line;
}
