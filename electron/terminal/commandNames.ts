/** The commands of the terminal, so that the window's program knows one without loading them. */
export const COMMAND_NAMES = [
  "check",
  "live",
  "why",
  "shares",
  "sneaks",
  "jumper",
  "table",
  "order",
  "proof",
  "print",
  "export",
  "exercise",
  "grade",
  "lesson",
  "questions",
] as const;

/** What a command line asks for: words for the terminal, or a window, with a file where one is named. */
export type Asked = { readonly command: readonly string[] } | { readonly file: string | null };

/**
 * What these words ask for. `open` is the window. Switches before the first word are Electron's own, but for the one that asks
 * what can be asked.
 */
export function askedBy(words: readonly string[]): Asked {
  const [first, ...rest] = words.slice(words.findLastIndex(isSwitchAtFront) + 1);
  if (first === undefined) return words.includes("--help") ? { command: ["--help"] } : { file: null };
  if (first === "open") return askedBy(rest);
  return isCommand(first) ? { command: [first, ...rest] } : { file: first };
}

function isSwitchAtFront(_: string, index: number, words: readonly string[]): boolean {
  return words.slice(0, index + 1).every((word) => word === "" || word.startsWith("-"));
}

function isCommand(word: string): boolean {
  return (COMMAND_NAMES as readonly string[]).includes(word);
}

/** The connection string given as `--library STRING` or `--library=STRING`, null where none is, and the words without it. */
export function libraryIn(words: readonly string[]): {
  readonly library: string | null;
  readonly words: readonly string[];
} {
  const at = words.findIndex((word) => word === "--library" || word.startsWith("--library="));
  if (at < 0) return { library: null, words };
  const isOneWord = words[at] !== "--library";
  const library = isOneWord ? words[at]!.slice("--library=".length) : (words[at + 1] ?? "");
  return { library, words: [...words.slice(0, at), ...words.slice(at + (isOneWord ? 1 : 2))] };
}
