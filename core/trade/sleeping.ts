import type { Amps, Minutes } from "../base/units.ts";
import { PRACTICE, type Source } from "./source.ts";

/** Most that a sleeping vehicle takes from its battery; what its maker gives goes before it. */
export const SLEEPING_AMPS: { readonly amps: Amps; readonly source: Source } = { amps: 0.05, source: PRACTICE };

/** Until the last module of a locked vehicle sleeps (a guess; some take twice as long). */
export const UNTIL_ASLEEP: Minutes = 30;
