import type { Refusal } from "../../core/base/outcome.ts";
import { sentence } from "../../core/base/words.ts";

/** Where a command writes: kept apart from the process so that tests read it. */
export interface Console {
  write(text: string): void;
  complain(text: string): void;
  readonly hasColour: boolean;
  /** Columns of the terminal. */
  readonly width: number;
}

/** What a command ends with: fine, a finding, bad input, or a fault of the program itself. */
export const EXIT = { fine: 0, finding: 1, badInput: 2, ownFault: 70 } as const;

/** Thrown by a command on a wrong entry; `runTerminal` turns it into one sentence and exit code 2. */
export class BadInput extends Error {
  readonly refusal: Refusal;
  constructor(refusal: Refusal) {
    super(sentence(refusal));
    this.refusal = refusal;
  }
}

/** The value of an outcome; a refusal ends the command. */
export function need<T>(
  outcome: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly refusal: Refusal },
): T {
  if (!outcome.ok) throw new BadInput(outcome.refusal);
  return outcome.value;
}
