import type { CallName } from "../../schemas/callNames.ts";

/**
 * Calls that change what the library has. Where it is only looked at they are refused before anything else; all others are
 * answered, also those that bring something new to the bench: it is not kept then.
 */
const KEEPING: ReadonlySet<CallName> = new Set([
  "circuits.save",
  "circuits.duplicate",
  "circuits.rename",
  "circuits.remove",
  "circuits.restore",
  "benches.save",
  "jobs.remove",
  "jobs.restore",
  "attempts.add",
  "attempts.restart",
  "attempts.remove",
  "attempts.restore",
  "marks.keep",
  "marks.forget",
] satisfies readonly CallName[]);

/** Whether a call is for nothing where the library is only looked at. */
export function isKeeping(call: CallName): boolean {
  return KEEPING.has(call);
}
