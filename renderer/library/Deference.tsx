import { TAKE_HOME_WORDS } from "../../core/base/words/takeHome.ts";

/** Whose word comes first. */
export function Deference() {
  return <p className="deference">{TAKE_HOME_WORDS.deference}</p>;
}
