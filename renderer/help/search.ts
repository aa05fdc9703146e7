import { HELP, HELP_ORDER, type HelpTopic } from "../../core/base/words/help/index.ts";
import type { HelpBlock, HelpPage } from "../../core/base/words/help/page.ts";

/** Pages under one heading. */
export interface HelpGroup {
  readonly title: string;
  readonly topics: readonly HelpTopic[];
}

/** The pages that say every word typed, by heading; all of them for an empty text. */
export function helpFor(typed: string): readonly HelpGroup[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  return HELP_ORDER.flatMap(({ title, topics }) => {
    const found = topics.filter((topic) => words.every((word) => textOf(topic).includes(word)));
    return found.length > 0 ? [{ title, topics: found }] : [];
  });
}

/** The page that fits best among those found: one whose title says the first word, else the first; null where none was found. */
export function bestOf(groups: readonly HelpGroup[], typed: string): HelpTopic | null {
  const topics = groups.flatMap((group) => group.topics);
  const [word = ""] = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const isNamed = (topic: HelpTopic): boolean => HELP[topic].title.toLowerCase().includes(word);
  return topics.find(isNamed) ?? topics[0] ?? null;
}

function textOf(topic: HelpTopic): string {
  const { title, also = "", blocks }: HelpPage = HELP[topic];
  return [title, also, ...blocks.flatMap(sayings)].join(" ").toLowerCase();
}

function sayings(block: HelpBlock): readonly string[] {
  if (typeof block === "string") return [block];
  return "terms" in block ? block.terms.flat() : block;
}
