/** The name of what tells all tests that they are run in their long form: `npm run test:long`. */
export const LONG = "TESTS_LONG";

/** True in the long form: every story in both hosts, and more of what is tried by lot or out of many. */
export const isLong = process.env[LONG] === "1";

/** A number of trials: the first in `npm test`, the second in the long form. */
export function trials(usual: number, long: number): number {
  return isLong ? long : usual;
}
