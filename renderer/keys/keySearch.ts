import { COMMAND_WORDS } from "../../core/base/words/edit.ts";
import { COMMANDS } from "../../core/edit/commands/index.ts";
import { keysOf, type OwnKeys } from "../../core/edit/keys/ownKeys.ts";
import { printed } from "../../core/edit/keys/press.ts";
import { type ChangeableId, isChangeable, KEY_ROWS, type KeyPlace } from "../../core/edit/keys/rows.ts";

/** One line of the sheet of keys. */
export interface KeyLine {
  readonly id: string;
  readonly words: string;
  /** As they are printed on this keyboard; none for a command that only menus, lists and the editor give. */
  readonly keys: readonly string[];
  /** The row of the table, where a person can give it another key. */
  readonly changes: ChangeableId | null;
}

/** Lines under one heading. */
export interface KeyGroup {
  readonly title: string;
  readonly lines: readonly KeyLine[];
}

const TITLES: Readonly<Record<KeyPlace, string>> = {
  window: "Anywhere",
  drawing: "On the drawing",
  pen: "With a part or wire in hand",
  print: "On the corners of a printed page",
  strip: "On a control under the drawing",
  class: "In front of what the class sees",
};
const WITHOUT = "Without a key: from menus, lists and the part editor";

/**
 * Every key with what it does and every command that has none, by place, narrowed to what was typed: words, or a key as
 * "Ctrl Z" or "ctrl+z". One letter alone is a key. A line whose key was just changed stays, whatever was typed.
 */
export function keyGroups(
  typed: string,
  isMac: boolean,
  own: OwnKeys,
  changed: ChangeableId | null = null,
): readonly KeyGroup[] {
  const wanted = typed
    .toLowerCase()
    .replace(/(\S)\+(?=\S)/g, "$1 ")
    .split(/\s+/)
    .filter(Boolean);
  const fits = (words: string, keys: readonly string[]): boolean =>
    wanted.length === 0 || wanted.every((word) => isIn(word, words, keys)) || isKey(wanted, keys);
  const places = (Object.keys(TITLES) as KeyPlace[]).map((place) => ({
    title: TITLES[place],
    lines: KEY_ROWS.flatMap((row): readonly KeyLine[] => {
      if (row.place !== place) return [];
      const spellings = keysOf(row.id, own);
      const keys = spellings.map((key) => printed(key, isMac));
      const isShown = row.id === changed || fits(row.words, [...keys, ...spellings.map((key) => printed(key, false))]);
      const changes = isChangeable(row) ? (row.id as ChangeableId) : null;
      return isShown ? [{ id: row.id, words: row.words, keys, changes }] : [];
    }),
  }));
  const lines = commandsWithoutKey().filter(({ words }) => fits(words, []));
  return [...places, { title: WITHOUT, lines }].filter((group) => group.lines.length > 0);
}

/** Titles of the commands of core that no key comes to. */
function commandsWithoutKey(): readonly KeyLine[] {
  const named = new Set<string>(KEY_ROWS.flatMap((row) => ("commands" in row ? row.commands : [])));
  return COMMANDS.flatMap(({ id }): readonly KeyLine[] =>
    named.has(id) ? [] : [{ id, words: COMMAND_WORDS[id] ?? id, keys: [], changes: null }],
  );
}

function isIn(word: string, words: string, keys: readonly string[]): boolean {
  const caps = keys.flatMap((key) => key.toLowerCase().split(" "));
  return word.length === 1 ? caps.includes(word) : `${words} ${keys.join(" ")}`.toLowerCase().includes(word);
}

/** The whole of what was typed is one key, such as "page down". */
function isKey(wanted: readonly string[], keys: readonly string[]): boolean {
  return keys.some((key) => key.toLowerCase() === wanted.join(" "));
}
