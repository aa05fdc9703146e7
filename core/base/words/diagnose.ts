/** Sentences for readings that cannot be taken as typed. */
export const DIAGNOSE_WORDS = {
  "reading-spelling":
    "{text} is no reading; write RED @ CONDITION : VALUE, such as X5-6 @ S1=on : 11.9V or battery+/X5-1 @ S1=on : dim.",
  "reading-empty": "Write what was read, such as 11.9 or dim.",
  "reading-value": "{typed} is no reading here; write {words}.",
  "reading-unit": "{typed}: this row is read in volts.",
  "reading-high": "{typed} cannot be read on a {nominal} V circuit; look at the unit and at the meter's range.",
  "reading-count": "This row takes {count} values, one for each position, not {typed}.",
  "reading-row": "There is no row {row}; the rows go from 1 to {rows}.",
  "reading-column": "{typed} is no list of rows; write 7=11.9 8=0.1.",
  "reading-lamp": "No lamp goes on {point}: {reason}.",
  "reading-part": "{part} can be neither looked at nor listened to; a fuse, a control, a plug or a relay can.",
  "reading-none": "There is no reading {number}.",
  "battery-volts": "{typed} V cannot be a {nominal} V battery at rest; write what the meter shows between its posts.",
} as const;
