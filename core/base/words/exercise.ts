/** Sentences for exercises that cannot be made, opened or gone on with as asked. */
export const EXERCISE_WORDS = {
  "plant-pattern":
    "{fault} comes and goes, and cannot be hidden: a good reading while it is away would clear nothing, so no route could be proven by its readings. Hide one that stays.",
  "plant-crossed": "{fault} cannot be hidden: no reading tells crossed wires for certain; choose another fault.",
  "plant-several": "{fault} are several faults without one cause; an exercise hides one.",
  "exercise-works": "{check} works in spite of {fault}, so there would be nothing to complain of.",
  "exercise-access": "There is no access group {group}; this circuit has {groups}.",
  "exercise-instruments": "An exercise must allow at least one instrument.",
  "exercise-format":
    'This is not an exercise file: where one says "wirefathom/exercise" as its format, it says {format}.',
  "exercise-ending": "{file} must end in .exercise.json.",
  "exercise-changed":
    "This exercise was changed after it was sealed: circuit, complaint or rules are not those that it was made with.",
  "passphrase-wrong": "The passphrase does not open this exercise.",
  "passphrase-other": 'The passphrase does not open the exercise "{title}".',
  "passphrase-twice": "The two passphrases are not the same; type it twice alike.",
  "passphrase-short": "A passphrase has at least {least} characters.",
  "passphrase-missing": "Say the instructor's passphrase: --passphrase WORDS or --passphrase-file FILE.",
  "exercise-choice": "Say which fault is hidden: --fault FAULT, or --seed NUMBER to have one drawn.",
  "exercise-none": "There is no such fault to hide behind {check}.",
  "exercise-words": "A title, note or complaint has at most {most} characters, not {length}.",
  "instrument-unknown": "{typed} is no instrument; known are {known}.",
  "whole-number": "{option} takes a whole number, not {typed}.",
  "access-spelling": "{text} is no time for trim; write GROUP=MINUTES, such as fuse-box=3.",
  "exercise-version":
    "This exercise was made by another version of the program or of the circuit; ask for it to be made anew.",
  "handin-format": 'This is not a hand-in: where one says "wirefathom/handin" as its format, it says {format}.',
  "handin-ending": "{file} must end in .handin.json.",
  "learner-name": "A name is one line of at most {most} plain signs.",
  "learner-other": "This hand-in is {learner}'s; it goes on under that name only.",
  "handin-head": "This hand-in was edited: the name {learner} or the exercise it is of was written over.",
  "handin-edited": "The hand-in of {learner} was edited by hand from move {number} on ({move}).",
  "handin-unsigned":
    "The hand-in of {learner} was not written like this by the program: moves were cut off, or it was put together by hand.",
  "handin-other":
    'The hand-in of {learner} is of another exercise or another make of it ("{title}"), not of "{wanted}".',
  "handin-waits": 'The hand-in of {learner} is of "{title}", and that exercise is not open here.',
  "handin-failed": "The program itself failed on this hand-in: {words}.",
  "handin-over": "This hand-in has its verdict already.",
  "route-strange": "The vehicle does not show that at move {number} ({move}): the route was not made on this exercise.",
  "move-spelling":
    "{text} is nothing to do here; write it like throw S1=on, probe X5-6 @ S1=on, lamp X5-6, open TRIM, unplug X5, look F4 or verdict W13:open.",
  "move-condition": "{text}: only switches, plugs, fuses and the engine can be set here.",
  "move-over": "The verdict is filed; this exercise is over.",
  "move-engine": "The engine {does} already.",
  "move-hint": "No more hints are allowed here; there were {count}.",
  "move-stands": "{control} stands at {position} already.",
  "move-access": "There is no trim {access}; this circuit has {groups}.",
  "move-open": "{trim}: that is done already.",
  "move-apart": "{plug} is apart already.",
  "move-home": "{plug} is plugged in.",
  "move-no-socket": "{part} cannot be taken out; a fuse or a relay can.",
  "move-no-spare": "There is no new {part} at hand; there is one of a fuse, a relay, a flasher or a bulb.",
  "move-out": "{part} is out already.",
  "move-in": "{part} is in its place.",
  "move-forbidden": "{place} is not to be touched: {reason}.",
  "move-trim": "{place} cannot be reached yet: {trim} first (open {access}).",
  "move-instrument": "The {instrument} is not allowed in this exercise; allowed are {allowed}.",
  "move-same-point": "Both leads are on {point}; one of them goes elsewhere.",
  "move-no-point": "{point} cannot be reached with a probe.",
  "move-lamp": "The 4 A lamp is too much for {point}; take the 0.25 A lamp.",
  "move-no-fuse": "{red} and {black} are not the two blades of a fuse.",
  "move-fuse-in": "{fuse} is still in; take it out before the lamp goes in its place.",
  "move-no-module": "{part} is no control module that a scan tool could ask.",
  "move-silent": "{part} makes no sound of its own; a relay does.",
  "move-nothing-thrown": "{part} is listened to while a switch is thrown; throw one first.",
  "move-proof": "There is no reading {number}; {readings} were taken.",
} as const;

/** Instruments, senses and acts as they are called in a sentence. */
export const INSTRUMENT_NAMES = {
  "meter volts": "voltmeter",
  "meter ohms": "ohmmeter",
  clamp: "clamp ammeter",
  "4 A lamp": "4 A lamp",
  "0.25 A lamp": "0.25 A lamp",
  look: "look at a part",
  listen: "listening to a relay",
  "scan tool": "scan tool",
  "fed direct": "fused jumper to a load",
  "fed loose": "fused jumper to a motor off its mechanism",
  "like relay": "like relay",
} as const;

/** What is said while a learner is at work. */
export const EXERCISE_SAYS = {
  row: (leads: string, conditions: readonly string[]) =>
    `${leads} ${conditions.map((each) => (each === "" ? "at rest" : `with ${each}`)).join(", then ")}`,
  hint: (row: string, trim: readonly string[]) =>
    `Next: ${row}.${trim.map((each) => ` Before that: ${each}.`).join("")}`,
  minutes: (minutes: string) => `${minutes} minutes so far.`,
  told: (isRight: boolean, was: string) => (isRight ? `Right: ${was}.` : `Not that: it was ${was}.`),
  filed: "The verdict is filed.",
  /** At most three are named. */
  alike: (others: readonly string[]) =>
    `No reading that is allowed tells it from ${others.slice(0, 3).join("; ")}${others.length > 3 ? `; and ${others.length - 3} more` : ""}.`,
  noHint: "Nothing that may be read here would tell more; look at what was read.",
} as const;
