/** Sentences for readings that cannot be taken as typed. */
export const DIAGNOSE_WORDS = {
  "shares-target": "{target} is no place that others share; ask for a fuse, splice, ground, connector, pin or wire.",
  "shares-unknown": "There is no fuse, splice, ground, connector, pin or wire {target} in this circuit.",
  "jumper-same": "Both ends of the jumper are on {point}; name two points.",
  "jumper-fuse": "A jumper's fuse has {least} to {most} A, not {typed}.",
  "jumper-fuse-spelling": "{text} is no rating of a fuse; write it like 10A.",
  "shares-no-wire": "No wire ends at {target}, so nothing hangs on it.",
  "reading-spelling":
    "{text} is no reading; write RED @ CONDITION : VALUE, such as X5-6 @ S1=on : 11.9V or battery+/X5-1 @ S1=on : dim.",
  "reading-empty": "Write what was read, such as 11.9 or dim.",
  "reading-value": "{typed} is no reading here; write {words}.",
  "reading-unit": "{typed}: this row is read in {unit}.",
  "reading-negative": "{typed}: ohms are never below 0.",
  "reading-live":
    "{lead} is fed there, and ohms are read only where nothing is: part the plug, or take the battery off (battery:off).",
  "reading-clamp": "No clamp goes round one wire alone at {point}.",
  "reading-high": "{typed} cannot be read on a {nominal} V circuit; look at the unit and at the meter's range.",
  "reading-count": "This row takes {count} values, one for each position, not {typed}.",
  "reading-row": "There is no row {row}; the rows go from 1 to {rows}.",
  "reading-column": "{typed} is no list of rows; write 7=11.9 8=0.1.",
  "sheet-unknown":
    "No checklist or branch sheet of this job has the code {code}. Type what it was printed with: complaint, what works, job and weights.",
  "sheet-no-rows": "Type what was read on sheet {code} after --read, row by row: 7=11.9.",
  "reading-lamp": "No lamp goes on {point}: {reason}.",
  "reading-act":
    "{part} cannot be {act}: a load with a plug of its own can be fed, a relay in a socket can be swapped.",
  "reading-part": "{part} can be neither looked at nor listened to; a fuse, a control, a plug or a relay can.",
  "reading-shape": "What was read cannot be understood.",
  "reading-misfit": "The drawing has no {point} to read at, or not in that setting.",
  "readings-none": "Nothing has been read yet.",
  "branches-one": "No row parts the suspects of this complaint: there is nothing to branch on.",
  "branches-misled": "The sheet would not lead {suspect} to its own verdict, so it is not printed; use the checklist.",
  "sleeping-amps": "{typed} is no sleeping current; write milliamps, such as {usual}.",
  "proof-fault": "{fault} does not bring this complaint about, so there is nothing to prove; name a suspect of order.",
  "proof-no-load": "{load} carries no current in any function check, so no reading under load can prove a repair.",
  "handover-words":
    "The handover page holds {most} words and one sheet; this has {words} words: say less of what was told and done.",
  "proof-none": "Nothing is found yet: read on until one suspect is left, or name one with --fault.",
  "reading-none": "There is no reading {number}.",
  "battery-volts": "{typed} V cannot be a {nominal} V battery at rest; write what the meter shows between its posts.",
} as const;

/** How far a search is, in words for screen and paper. */
export const DIAGNOSE_SENTENCES = {
  open: (minutes: string) =>
    `About ${Number(minutes) > 1 ? `${minutes} more minutes` : "a minute more"}, if the next row is chosen anew after each reading.`,
  certain: (found: string) => `Found: ${found}. Prove it before a part is ordered.`,
  tied: (found: string) => `No row that is left tells the suspects apart. Likeliest: ${found}.`,
  orderNow: (found: string) => `More proof costs more than a wrong part would: ${found}. Prove it before fitting.`,
  none: "No single fault of this drawing does what was seen.",
  elsewhere: (share: string) => `Something that is not on this drawing: ${share}.`,
  clash: (one: number, other: number) =>
    `Readings ${one} and ${other} cannot both be right with one fault: read ${other} again, or there are two faults.`,
  notMended: (found: string) => `${found}, not mended`,
  still: (wrong: string) => `still ${wrong}`,
  jumperLeft: (from: string, to: string) => `jumper lead left on from ${from} to ${to}`,
  sameLoad: "every position of the load",
  sharesPath: "shares what was mended",
  sharesPlug: (plug: string) => `its wires pass plug ${plug}`,
  showsMasked: "shows what the repair may mask",
  parts: (masked: readonly string[]) => {
    const [first = "", second] = masked;
    const more = masked.length > 2 ? ` and ${masked.length - 2} more` : "";
    return second === undefined ? `Tells: ${first}.` : `Tells: ${first}; ${second}${more}.`;
  },
  misfit: (number: number) => `Reading ${number} fits no single fault that the others fit: read it again.`,
} as const;

/** What is expected of a row that is told by a word, where the word alone leaves open what that means. */
export const EXPECTED_WORDS: Readonly<Record<string, string>> = { "no change": "no change: the old one is good" };
