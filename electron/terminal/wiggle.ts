import { WIGGLE_WORDS as SAY } from "../../core/base/words/wiggle.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { percent } from "../../core/diagnose/progressWords.ts";
import type { WiggleSheet } from "../../core/diagnose/wiggle.ts";
import { swingText } from "../../core/diagnose/wiggleEntry.ts";
import { conditionText } from "../../core/live/condition.ts";
import { watchWords } from "../../core/paper/wiggle.ts";
import type { Console } from "./console.ts";
import { wrapped } from "./rows.ts";

/** Writes the rows of a wiggle sheet: where the meter stays, then place by place. */
export function printWiggle(console: Console, circuit: Circuit, sheet: WiggleSheet): void {
  const width = Math.min(console.width, 110);
  const say = (text: string, first = "", indent = first): void =>
    console.write(`${wrapped(text, width, first, indent)}\n`);
  console.write(`\n${SAY.title}\n`);
  say(`${conditionText(sheet.condition) || "rest"}: ${watchWords(sheet)}`);
  for (const caution of sheet.cautions) say(`! ${caution}`, "", "  ");
  for (const { number, place, how, share, suspects, minutes, read, swings } of sheet.rows) {
    const trim = circuit.access.find(({ id }) => id === place.access)?.label;
    const found = read ? `   ${swingText(read)}${swings ? ", swings" : ", still"}` : "";
    console.write(
      `${String(number).padStart(3)}  ${place.id}   ${percent(share)}, ${minutes.toFixed(1)} min${found}\n`,
    );
    say(
      [place.title === place.id ? "" : `${place.title}.`, trim ? `${trim}.` : "", ...how].filter(Boolean).join(" "),
      "     ",
    );
    say(suspects.join("; "), "     ");
  }
  if (sheet.guilty !== null) say(SAY.movesIt(sheet.guilty));
}
