import type { Outcome, Refusal } from "../../core/base/outcome.ts";
import { sentence, WORDS } from "../../core/base/words.ts";
import type { Lots } from "../lots.ts";

/** What comes in by a door: a file's bytes, or text. */
export type Input = string | Uint8Array;

/** One way by which something from outside comes into the program. */
export interface Door {
  readonly name: string;
  /** How a good input is spoilt: as bytes, as plain text, or as the structure of JSON too. */
  readonly kind: "bytes" | "text" | "json";
  /** Good inputs, and some that are known to be bad. */
  seeds(): Promise<readonly Input[]>;
  /** An input of its own making, for a door to which spoilt seeds hardly ever lead. */
  make?(lots: Lots, seeds: readonly Input[]): Input;
  /** Lets it in: an outcome, or a list of what was made of each piece of it. Whatever it throws is a fault. */
  open(input: Input): unknown;
  /** How many inputs are meant for this door, beside the others' shares. */
  readonly share: number;
  /** Longest that a thread may work on one input, in milliseconds. */
  readonly mostMs: number;
}

/** What an input came to. */
export type Ending = "value" | "refused";

/** Lets an input in at a door and looks at what it came to; throws where that is neither a value nor a refusal with a sentence. */
export async function ending(door: Door, input: Input): Promise<Ending> {
  const result = (await door.open(input)) as Partial<Outcome<unknown>> | undefined;
  if (typeof result !== "object" || result === null)
    throw new Error(`neither a value nor a refusal: ${String(result)}`);
  if (result.ok === true) return "value";
  if (result.ok === false && "refusal" in result) {
    lookAt(result.refusal as Refusal);
    return "refused";
  }
  throw new Error(`neither a value nor a refusal: ${JSON.stringify(result)?.slice(0, 200)}`);
}

const MOST_SIGNS = 2_000;

/** A refusal has a sentence, which is one line, not endless, and says nothing to a terminal. */
function lookAt(refusal: Refusal): void {
  if (!WORDS.some((words) => refusal.code in words)) throw new Error(`no sentence for ${refusal.code}`);
  const said = sentence(refusal);
  if (said === "" || said.length > MOST_SIGNS)
    throw new Error(`${refusal.code} has a sentence of ${said.length} signs`);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: those are what is looked for
  const sign = /[\u0000-\u001f\u007f-\u009f]/.exec(said)?.[0];
  if (sign !== undefined) throw new Error(`${refusal.code} passes the sign ${sign.charCodeAt(0)} on`);
}
