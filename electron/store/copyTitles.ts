import { LIBRARY_NAMES } from "../../core/base/words/library.ts";
import { LIMITS } from "../../schemas/limits.ts";

/** `Roof vents (copy)`, `Roof vents (copy 2)` and so on without end: a copy takes the first that is free. */
export function* copyTitles(title: string): Generator<string, never> {
  const plain = title.replace(/ \(copy(?: \d+)?\)$/, "");
  for (let number = 1; ; number++) {
    const sign = ` (${LIBRARY_NAMES.copy}${number === 1 ? "" : ` ${number}`})`;
    yield plain.slice(0, LIMITS.labelLength - sign.length) + sign;
  }
}
