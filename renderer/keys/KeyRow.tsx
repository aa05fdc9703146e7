import { type KeyboardEvent, type ReactNode, useEffect, useRef, useState } from "react";
import type { Outcome, Refusal } from "../../core/base/outcome.ts";
import { sentence } from "../../core/base/words.ts";
import { type Giving, giveBack, giveKey } from "../../core/edit/keys/giveKey.ts";
import type { OwnKeys } from "../../core/edit/keys/ownKeys.ts";
import { printed, spelled } from "../../core/edit/keys/press.ts";
import { type ChangeableId, rowOf } from "../../core/edit/keys/rows.ts";
import { useApp } from "../state/AppContext.tsx";
import type { KeyLine } from "./keySearch.ts";
import { hasCommandKey } from "./useKeyOf.ts";

interface Shown {
  readonly line: KeyLine;
  readonly onTake: (own: OwnKeys, changed: ChangeableId) => void;
}

/** A line of the sheet of keys, where the key can be changed with the way to do it. */
export function KeyRow({ line, onTake }: Shown) {
  const { words, keys, changes } = line;
  const caps = keys.map((key) => (
    <kbd key={key} className="key-cap">
      {key}
    </kbd>
  ));
  return (
    <div className="key-line">
      <dt>{words}</dt>
      {changes === null ? (
        <dd>{caps.length > 0 ? caps : <span className="unseen">no key</span>}</dd>
      ) : (
        <Changing id={changes} words={words} caps={caps} onTake={onTake} />
      )}
    </div>
  );
}

/** What stands beside the keys: nothing but "Change", the press that is waited for, or a swap to be agreed to. */
type Stage =
  | { readonly is: "still" | "listening" }
  | { readonly is: "asking"; readonly own: OwnKeys; readonly question: string };

const HELD: ReadonlySet<string> = new Set(["Shift", "Control", "Alt", "Meta", "AltGraph", "CapsLock", "Fn"]);
const HOW = "Press the new key. Esc leaves it as it is.";

interface Changed extends Pick<Shown, "onTake"> {
  readonly id: ChangeableId;
  readonly words: string;
  readonly caps: readonly ReactNode[];
}

function Changing({ id, words, caps, onTake }: Changed) {
  const own = useApp(({ settings }) => settings.keys);
  const change = useRef<HTMLButtonElement>(null);
  const swap = useRef<HTMLButtonElement>(null);
  const [stage, setStage] = useState<Stage>({ is: "still" });
  const [trouble, setTrouble] = useState("");
  const rest = (): void => {
    setStage({ is: "still" });
    setTrouble("");
    change.current?.focus();
  };
  // The buttons take each other's place, and the focus goes along.
  const hasAsked = useRef(false);
  useEffect(() => {
    if (stage.is === "asking") swap.current?.focus();
    else if (hasAsked.current) change.current?.focus();
    hasAsked.current = stage.is === "asking";
  }, [stage]);

  const take = (giving: Outcome<Giving>): void => {
    setTrouble(giving.ok ? "" : said(giving.refusal));
    if (!giving.ok) return;
    const { swap: exchange, own: after } = giving.value;
    if (exchange) setStage({ is: "asking", own: after, question: asked(exchange, words) });
    else {
      onTake(after, id);
      rest();
    }
  };
  const hear = (event: KeyboardEvent): void => {
    if (stage.is !== "listening" || event.key === "Tab") return;
    event.preventDefault();
    event.stopPropagation();
    if (event.key === "Escape") rest();
    else if (!event.repeat && !HELD.has(event.key)) take(giveKey(own, id, spelled(event)));
  };
  /** The focus went elsewhere: nothing is waited for any more. */
  const leaveAlone = (): void => {
    setTrouble("");
    setStage((now) => (now.is === "listening" ? { is: "still" } : now));
  };
  const leave = (event: KeyboardEvent): void => {
    if (event.key !== "Escape") return;
    event.preventDefault();
    event.stopPropagation();
    rest();
  };

  if (stage.is === "asking")
    return (
      <dd className="key-ask" onKeyDown={leave}>
        <span role="status">{stage.question}</span>
        <button
          ref={swap}
          type="button"
          className="button"
          onClick={() => {
            onTake(stage.own, id);
            rest();
          }}
        >
          Swap
        </button>
        <button type="button" className="button is-low" onClick={rest}>
          Cancel
        </button>
      </dd>
    );
  const isListening = stage.is === "listening";
  return (
    <dd>
      {caps}
      {own[id] !== undefined && (
        <button
          type="button"
          className="button is-low"
          aria-label={`Back to the given key of ${words}`}
          title={rowOf(id)
            .keys.map((key) => printed(key, hasCommandKey()))
            .join(", ")}
          onClick={() => take(giveBack(own, id))}
        >
          Back to the given key
        </button>
      )}
      <button
        ref={change}
        type="button"
        className={isListening ? "button" : "button is-low"}
        aria-label={isListening ? `${HOW} ${words}` : `Change the key of ${words}`}
        onClick={() => setStage({ is: "listening" })}
        onKeyDown={hear}
        onKeyUp={(event) => isListening && event.preventDefault()}
        onBlur={leaveAlone}
      >
        {isListening ? HOW : "Change"}
      </button>
      <span className="key-said" role="status">
        {trouble}
      </span>
    </dd>
  );
}

/** A refusal with its keys as they stand on this keyboard. */
function said({ code, about }: Refusal): string {
  const keys = Object.entries(about).map(([name, value]) => [
    name,
    name === "other" ? value : printed(String(value), hasCommandKey()),
  ]);
  return sentence({ code, about: Object.fromEntries(keys) });
}

function asked({ other, key, old }: NonNullable<Giving["swap"]>, words: string): string {
  const [one, two] = [printed(key, hasCommandKey()), printed(old, hasCommandKey())];
  return `${one} is the key of "${other}": swap, so that it gets ${two}, or leave "${words}" as it is?`;
}
