import { capital } from "../capital.ts";

/** Words of questions that a circuit asks, and what speaks against each wrong idea. */
export const QUESTION_WORDS = {
  when: (stands: string, wrong: string) =>
    wrong === "" ? `${capital(stands)}.` : `${capital(stands)}; what is wrong: ${wrong}.`,
  place: (point: string, wire: string | null, colour: string | null) =>
    wire === null ? point : `${point} (wire ${wire}${colour === null ? "" : `, ${colour}`})`,
  state: (place: string) => `What is ${place}: powered, grounded, between or floating?`,
  volts: (place: string, black: string) => `What does a meter read, red on ${place}, black on ${post(black)}?`,
  lamp: (lamp: string, place: string, to: string) => `A ${lamp} goes from ${post(to)} to ${place}. How does it burn?`,
  answer: (answer: string) => `${capital(answer)}.`,
  ideas: {
    "open-is-zero": "an open switch has 0 V across it",
    "no-flow-no-volts": "where no current flows there are no volts",
    "used-up": "every part on the way uses some of the volts up",
    "zero-is-ground": "what reads 0 V is ground",
    "ground-side-is-ground": "the ground side of a load is always at 0 V",
    "unloaded-is-good": "full volts on a meter mean a good feed",
    "colour-is-state": "the colour of a wire tells what it carries",
  },
  against: {
    "open-is-zero": "An open contact holds apart what lies on its two sides, so their difference stands across it.",
    "no-flow-no-volts":
      "Volts need no current: a wire joined to the feed has the feed's volts even when nothing draws on it.",
    "used-up": "Wires and closed contacts use up next to nothing: the volts are spent in the load.",
    "zero-is-ground":
      "A wire that hangs on nothing reads 0 V as well; only a lamp from battery plus tells it from ground.",
    "ground-side-is-ground":
      "With the ground gone no current flows, so the load drops nothing and both its sides stand at feed volts.",
    "unloaded-is-good":
      "A meter draws next to nothing: it reads full volts through any load or bad joint, a lamp does not.",
    "colour-is-state": "The colour only names the wire; what it carries depends on what it is joined to now.",
  },
} as const;

function post(lead: string): string {
  return lead === "battery -" ? "battery −" : lead;
}

/** Sentences for questions that cannot be made. */
export const QUESTION_REFUSALS = {
  "questions-count": "{typed} questions cannot be made; ask for 1 to {most}.",
  "questions-none": "Nothing can be asked there.",
  "questions-known": "The scene asks that already.",
  "questions-many": "A scene asks {most} questions at most.",
  "lesson-none": "{title} has no scenes to teach from.",
} as const;
