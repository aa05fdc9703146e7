/** An error of the program itself on its way out of a worker. */
export interface Trouble {
  readonly trouble: string;
  /** Where it was thrown, where that is known. */
  readonly at?: string;
}

/** What was thrown, as far as it can be handed over. */
export function troubleIn(error: unknown): Trouble {
  if (!(error instanceof Error)) return { trouble: String(error) };
  return { trouble: error.message, ...(error.stack !== undefined && { at: error.stack }) };
}

/** Whether what came out of a worker is an error of the program itself. */
export function isTrouble(answer: Partial<Trouble>): answer is Trouble {
  return answer.trouble !== undefined;
}

/** The worker's own error again. */
export function faultOf({ trouble, at }: Trouble): Error {
  const error = new Error(trouble);
  if (at !== undefined) error.stack = at;
  return error;
}
