import type { PartId, WireId } from "../base/ids.ts";
import type { WireState } from "../base/states.ts";
import { CHANGE_WORDS } from "../base/words/edit.ts";
import { STATE_WORDS } from "../base/words/sheet.ts";
import { isQuiet } from "../live/differences.ts";
import type { Live, PartLive } from "../live/live.ts";
import type { Doing } from "../parts/kind.ts";

/** What is not as it was: wires whose state changed, with the new state of both ends, and parts that do something else. */
export interface Changes {
  readonly wires: readonly { readonly wire: WireId; readonly state: readonly [WireState, WireState] }[];
  /** What a part does now; null where a melted fuse is good again. */
  readonly parts: readonly { readonly part: PartId; readonly doing: Doing["doing"] | null }[];
  /** Parts that do not come to rest. */
  readonly chattering: readonly PartId[];
}

/** What changed between two live states, in the order of the circuit; what melted or tripped comes first. */
export function changesBetween(before: Live, after: Live): Changes {
  const wires: Changes["wires"][number][] = [];
  for (const [wire, now] of after.wires) {
    const was = before.wires.get(wire);
    const isAlike = was === now || (was && was.state[0] === now.state[0] && was.state[1] === now.state[1]);
    if (!isAlike) wires.push({ wire, state: now.state });
  }
  const parts: Changes["parts"][number][] = [];
  for (const [part, now] of after.parts) {
    const was = before.parts.get(part);
    if (was && was !== now && isNews(was, now)) parts.push({ part, doing: now.doing });
  }
  const isLost = ({ doing }: Pick<PartLive, "doing">): boolean => doing === "melted" || doing === "tripped";
  return {
    wires,
    parts: [...parts.filter(isLost), ...parts.filter((part) => !isLost(part))],
    chattering: after.happenings.flatMap((happening) => (happening.what === "chatters" ? happening.parts : [])),
  };
}

function isNews({ doing: was }: PartLive, { doing: now }: PartLive): boolean {
  return was !== now && !(isQuiet(was) && isQuiet(now));
}

/** Wires and parts that are named one by one; the rest are counted. */
const MOST_NAMED = 3;

/** What was done and what changed by it, in one breath: "S5 to open. 6 wires changed: W16 powered, ... M3 runs forward." */
export function saidChanges(done: string, { wires, parts, chattering }: Changes): string {
  const { wires: counted, ends, nothing, chatters } = CHANGE_WORDS;
  const wireWords = wires.map(({ wire, state: [from, to] }) => `${wire} ${ends(STATE_WORDS[from], STATE_WORDS[to])}`);
  const partWords = parts.map(({ part, doing }) => `${part} ${doing ? CHANGE_WORDS.doing[doing] : CHANGE_WORDS.whole}`);
  const sentences = [
    ...(done === "" ? [] : [done]),
    ...(wires.length > 0 ? [`${counted(wires.length)}: ${few(wireWords)}`] : []),
    ...(parts.length > 0 ? [few(partWords)] : []),
    ...(chattering.length > 0 ? [chatters(chattering.join(", "))] : []),
  ];
  const isNothing = wires.length + parts.length + chattering.length === 0;
  return [...sentences.map((sentence) => `${sentence}.`), ...(isNothing ? [nothing] : [])].join(" ");
}

function few(words: readonly string[]): string {
  if (words.length <= MOST_NAMED + 1) return words.join(", ");
  return [...words.slice(0, MOST_NAMED), CHANGE_WORDS.more(words.length - MOST_NAMED)].join(", ");
}
