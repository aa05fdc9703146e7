import type { Source } from "./source.ts";
import { MEMORY, published } from "./source.ts";

/** A terminal number of DIN 72552 and what the device has there. */
export interface TerminalNumber {
  readonly number: string;
  readonly meaning: string;
  readonly source: Source;
}

const DIN = published("DIN 72552, summaries at kupdf.net, en.wikipedia.org and ilexa.co.uk");
const CONTACTS = published("DIN 72552 relay rows in a question-and-answer extract, and a micro ISO relay listing");
const COIL_PAIR = published(
  "micro ISO change-over relay listing at sa.tilga.com: the coil pair; the polarity from memory",
);

function numbers(
  source: Source,
  list: readonly (readonly [number: string, meaning: string])[],
): readonly TerminalNumber[] {
  return list.map(([number, meaning]) => ({ number, meaning, source }));
}

/** Numbers with a letter for each of several like circuits, `50a` to `50h`. */
function lettered(source: Source, number: string, letters: string, meaning: string): readonly TerminalNumber[] {
  return [...letters].map((letter) => ({ number: number + letter, meaning, source }));
}

/**
 * DIN 72552 (summaries of the standard; rows marked from memory were not seen). A number belongs to the device, not to the
 * wire: the two ends of one wire may carry different numbers.
 */
export const TERMINAL_NUMBERS: readonly TerminalNumber[] = [
  ...numbers(DIN, [
    ["1", "ignition coil, low tension"],
    ["4", "ignition coil, high tension"],
    ["15", "switched positive after the ignition switch"],
    ["15a", "ballast resistor to coil and starter"],
    ["17", "glow-start switch, start"],
    ["19", "glow-start switch, preheat"],
    ["30", "battery positive, direct"],
    ["30a", "second battery positive, 12/24 V change-over"],
    ["31", "battery negative or ground, direct"],
    ["31b", "return to negative or ground through a switch or relay"],
    ["32", "motor, return"],
    ["33", "motor, main terminal"],
    ["33a", "motor, self-parking or limit"],
    ["33L", "motor, anticlockwise"],
    ["33R", "motor, clockwise"],
    ["45", "separate starter relay, output; starter, main current in"],
    ["49", "flasher, in"],
    ["49a", "flasher, out"],
    ["49b", "flasher, out, second circuit"],
    ["49c", "flasher, out, third circuit"],
    ["50", "starter control"],
  ]),
  ...lettered(DIN, "50", "abcdefgh", "starter control"),
  ...numbers(DIN, [
    ["53", "wiper motor, in"],
    ["53a", "wiper motor, self-parking positive"],
  ]),
  ...numbers(MEMORY, [
    ["53b", "wiper motor, shunt or second speed"],
    ["53c", "washer pump"],
    ["53e", "wiper motor, brake winding"],
  ]),
  ...numbers(DIN, [
    ["54", "brake lights"],
    ["55", "fog light"],
    ["56", "headlamp"],
    ["56a", "high beam and its tell-tale"],
    ["56b", "low beam"],
    ["56d", "flash to pass"],
    ["57", "parking light"],
  ]),
  ...numbers(MEMORY, [
    ["57L", "parking light, left"],
    ["57R", "parking light, right"],
    ["58", "side, tail and number-plate lamps"],
    ["58L", "side and tail lamps, left"],
    ["58R", "side and tail lamps, right"],
    ["58d", "instrument lamps, dimmed"],
  ]),
  ...numbers(DIN, [["61", "charge tell-tale"]]),
  ...numbers(MEMORY, [
    ["71", "horn sequence, in"],
    ["71a", "horn sequence, out"],
    ["75", "accessory feed"],
    ["76", "loudspeaker"],
    ["77", "door valve"],
  ]),
  ...numbers(COIL_PAIR, [
    ["85", "relay coil, end, usually negative"],
    ["86", "relay coil, start, usually positive"],
  ]),
  ...numbers(CONTACTS, [
    ["87", "relay contact, common output; the make contact of a mini ISO relay whose common is 30"],
    ["87a", "relay contact, break"],
    ["87b", "relay contact, second make"],
  ]),
  ...numbers(MEMORY, [
    ["88", "relay make contact, in"],
    ["88a", "relay make contact, out"],
  ]),
  ...numbers(DIN, [
    ["B+", "battery positive"],
    ["B-", "battery negative"],
    ["D+", "dynamo or alternator positive"],
    ["DF", "dynamo or alternator field"],
    ["C", "flasher tell-tale"],
    ["C2", "second flasher tell-tale"],
    ["C3", "third flasher tell-tale"],
    ["L", "indicators, left"],
    ["R", "indicators, right"],
    ["L54", "combined lights, left"],
    ["R54", "combined lights, right"],
  ]),
];

/** What DIN 72552 says of a terminal number; null where it has no such number. Letters count as written: 58L, 58d. */
export function terminalNumber(number: string): TerminalNumber | null {
  return TERMINAL_NUMBERS.find((each) => each.number === number) ?? null;
}
