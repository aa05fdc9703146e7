/** Sentences for weights that cannot be set as asked. */
export const WEIGHING_WORDS = {
  "weight-spelling": "{text} is no weight; write WHAT=TIMES: SOURCE, such as M3:seized=3: bulletin 12 of 2024.",
  "weight-of":
    "{of} is nothing here that can fail; name a part, a wire, a plug, a pin or one fault, such as M3 or M3:seized.",
  "weight-of-shop": "{of} is no kind of thing that can fail; name one, such as motor, wire, pin or motor:seized.",
  "weight-limits": "A weight goes from {least} to {most} times the guess, not {typed}.",
  "weight-source": "Say where that is known from.",
  "weight-none": "No weight is set for {of}.",
  "weight-shape": "The weights that were set cannot be understood.",
} as const;

/** Why a suspect weighs otherwise than its guess. */
export const WEIGHING_NOTES = {
  found: (count: number) => (count === 1 ? "Found here in 1 earlier job." : `Found here in ${count} earlier jobs.`),
  onCircuit: (of: string, factor: number, source: string) =>
    `Weighed ${factor} times on this circuit (${of}): ${source}.`,
  inShop: (of: string, factor: number, source: string) => `Weighed ${factor} times in this shop (${of}): ${source}.`,
} as const;

/** Names of edits of weights, as they stand after "Undo". */
export const WEIGHING_NAMES = {
  setWeight: (of: string, factor: number) => `weigh ${of} ${factor} times`,
  dropWeight: (of: string) => `weigh ${of} as guessed`,
} as const;

/** Titles of the commands on weights by id. */
export const WEIGHING_TITLES = { "set-weight": "Weigh a fault", "drop-weight": "Weigh it as guessed" } as const;
