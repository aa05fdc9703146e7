import { PRINTED_TITLES, PRINTED_WORDS } from "./printed.ts";
import { WIRING_TITLES, WIRING_WORDS } from "./wiring.ts";

/** Sentences for edits that cannot be made, and for amounts that cannot be read. */
export const EDIT_WORDS: Readonly<Record<string, string>> = {
  ...WIRING_WORDS,
  ...PRINTED_WORDS,
  "already-so": "{what} is so already.",
  "edit-gone": "There is no {what} {id} any more.",
  "edit-place": "There is no place {at} in the list of {what}.",
  "not-held": "{control} is not held in a position that springs back.",
  "at-rest": "All is at rest.",
  "not-apart": "{connector} is not apart.",
  "not-out": "{part} is not out.",
  "stays-in": "{part} does not come out: a {kind} is no part that is plugged in.",
  "fault-absent": "{fault} is not among the faults put in.",
  "no-faults": "No fault is put in, and nothing has melted or tripped.",
  "fuse-whole": "{part} has neither melted nor tripped.",
  "no-check": "There is no function check {check}.",
  "observed-word": "{word} is nothing that a check can be seen to do; it is one of {words}.",
  "not-placed": "{part} stands on no page.",
  "off-the-page": "{part} would stand off page {page}.",
  "part-hidden": "{part} would lie just over {other}, which could not be seen any more. Put it beside.",
  "label-long": "A label has at most {most} characters, not {length}.",
  "setting-needed": '{part}: "{setting}" must say something.',
  "amount-empty": "Type an amount.",
  "amount-spelling": "{text} is no amount; write a number and its unit.",
  "amount-unit": "{text} is not in {unit}.",
  "amount-comma": "{text} can be read in two ways; write the decimals after a point.",
  "amount-limits": "{what} goes from {min} to {max} {unit}, not {value}.",
  "colour-long": "A colour has at most {most} characters.",
  "kind-unknown": "There is no kind of part {kind}.",
  "assembly-unknown": "There is no ready assembly {assembly}.",
  "nothing-chosen": "Nothing is chosen.",
  "thing-unknown": "There is no part, wire or connector {id}.",
  "parts-few": "Choose at least {least} parts that stand on the page.",
  "pages-several": "These stand on several pages: {pages}.",
  "no-room": "There is no room to spread {what}: move the outermost further apart first.",
  "terminals-lost": "{part} cannot change to {kind}: the wires at {terminals} would have no terminal.",
  "fragment-none": "There are no parts of a drawing to paste.",
  "id-empty": "Type a name.",
  "id-long": "A name has at most {most} characters, not {length}.",
  "id-spelling": "{text} is no name: take letters and digits without spaces, {first} first.",
  "id-taken": "{id} is taken: a part, wire or connector is called that.",
  "nothing-to-undo": "There is nothing to undo.",
  "nothing-to-redo": "There is nothing to do again.",
  "history-damaged": "What was kept for undoing is damaged; the circuit itself is not.",
  "history-newer": "What was kept for undoing was written by a newer program.",
};

/** In what the circuit differs from which something comes: its volts where they are others, and colours that it lacks. */
interface Differing {
  readonly volts: number | null;
  readonly coloursLost: number;
}

function withChecks(count: number): string {
  if (count === 0) return "";
  return count === 1 ? " and 1 function check" : ` and ${count} function checks`;
}

/** Names of edits, as they stand after "Undo": a verb and the thing. */
export const EDIT_NAMES = {
  throwControl: (control: string, position: string) => `throw ${control} to ${position}`,
  letGo: (control: string) => `let go of ${control}`,
  restAll: "put all at rest",
  setUp: (condition: string) => `set up ${condition === "" ? "rest" : condition}`,
  pullApart: (connector: string) => `pull ${connector} apart`,
  pushHome: (connector: string) => `push ${connector} home`,
  takeOut: (part: string) => `take ${part} out`,
  putIn: (part: string) => `put ${part} in`,
  battery: (isOff: boolean) => (isOff ? "take the battery off" : "put the battery on"),
  engine: (isRunning: boolean) => (isRunning ? "start the engine" : "stop the engine"),
  ambient: (celsius: number | null) => (celsius === null ? "set the usual ambient" : `set ambient to ${celsius} degC`),
  driveOutput: (point: string, level: string | null) =>
    level === null ? `leave ${point} to its module` : `drive ${point} ${level}`,
  plantFault: (fault: string) => `put in ${fault}`,
  healFault: (fault: string) => `mend ${fault}`,
  healAll: "mend everything",
  showFaults: (isShown: boolean) => (isShown ? "show it with the fault" : "show it with nothing wrong"),
  replaceFuse: (part: string) => `replace ${part}`,
  resetBreaker: (part: string) => `reset ${part}`,
  observeCheck: (label: string, word: string) => `note "${label}": ${word.replaceAll("-", " ")}`,
  chooseComplaint: (label: string | null) => (label === null ? "drop the complaint" : `complain of "${label}"`),
  movePart: (part: string) => `move ${part}`,
  turnPart: (part: string) => `turn ${part}`,
  flipPart: (part: string) => `flip ${part}`,
  relabelPart: (part: string) => `label ${part}`,
  changeSetting: (part: string, setting: string, value: string) => `set ${setting} of ${part} to ${value}`,
  recolourWire: (wire: string, colour: string) => `colour ${wire} ${colour}`,
  resizeWire: (wire: string, size: string) => `size ${wire} ${size}`,
  changeLength: (wire: string, length: string) => `make ${wire} ${length} long`,
  changeOhms: (wire: string, ohms: string) => `give ${wire} ${ohms}`,
  alignThings: (parts: string) => `align ${parts}`,
  distributeThings: (parts: string) => `spread ${parts} evenly`,
  addPart: (part: string) => `draw ${part}`,
  rename: (what: string, id: string) => `rename ${what} to ${id}`,
  duplicateThings: (parts: string) => `duplicate ${parts}`,
  paste: (parts: string, { volts, coloursLost }: Differing) =>
    [
      `paste ${parts}`,
      ...(volts === null ? [] : [`drawn for ${volts} V`]),
      ...(coloursLost === 0 ? [] : [`without ${coloursLost === 1 ? "1 colour" : `${coloursLost} colours`}`]),
    ].join(", "),
  replaceKind: (part: string, kind: string) => `change ${part} to ${kind}`,
  removeThings: (what: string, checks: number) => `remove ${what}${withChecks(checks)}`,
  parts: (count: number) => `${count} parts`,
  things: (count: number) => `${count} things`,
  wire: (wire: string) => `wire ${wire}`,
  connector: (connector: string) => `connector ${connector}`,
  usual: "the usual",
  none: "none",
  unknown: "not known",
  fromSize: "the ohms of its size",
  yes: "yes",
  no: "no",
} as const;

/** What a wire is called as the thing that has limits. */
export const WIRE_AMOUNTS = { mm2: "The size of a wire", metres: "Its length", ohms: "Its resistance" } as const;

/** Titles of the commands by id. */
export const COMMAND_WORDS: Readonly<Record<string, string>> = {
  ...WIRING_TITLES,
  ...PRINTED_TITLES,
  "throw-control": "Throw",
  "let-go": "Let go",
  "rest-all": "All at rest",
  "set-up": "Set up",
  "pull-apart": "Pull apart",
  "push-home": "Push home",
  "take-out": "Take out",
  "put-in": "Put in",
  battery: "Battery on or off",
  engine: "Engine running or stopped",
  ambient: "Ambient",
  "drive-output": "Drive an output",
  "plant-fault": "Put a fault in",
  "heal-fault": "Mend the fault",
  "heal-all": "Mend everything",
  "show-faults": "Nothing wrong or with the fault",
  "replace-fuse": "Replace or reset",
  "observe-check": "Note what a check does",
  "choose-complaint": "Choose the complaint",
  "move-part": "Move",
  "turn-part": "Turn",
  "flip-part": "Flip",
  "relabel-part": "Label",
  "change-setting": "Change a value",
  "recolour-wire": "Colour of the wire",
  "resize-wire": "Size of the wire",
  "change-length": "Length of the wire",
  "change-ohms": "Ohms of the wire",
  "add-part": "Draw a part",
  "add-assembly": "Draw a ready assembly",
  "duplicate-things": "Duplicate",
  paste: "Paste",
  "remove-things": "Remove",
  "replace-kind": "Make it another kind",
  "rename-part": "Rename",
  "rename-wire": "Rename the wire",
  "rename-connector": "Rename the connector",
  "move-things": "Move together",
  "turn-things": "Turn together",
  "flip-things": "Flip together",
  "align-things": "Align",
  "distribute-things": "Spread evenly",
};

/** Titles of the ready assemblies by id. */
export const ASSEMBLY_WORDS = {
  "relay-with-fuse": "Relay with its fuse",
  "reversing-switch": "Reversing switch with motor",
  "lamp-pair": "Two lamps on one ground",
  "connector-pair": "Two in-line connectors with wires between",
} as const;

/** What changed, said in one breath. */
export const CHANGE_WORDS = {
  nothing: "Nothing else changed.",
  wires: (count: number) => (count === 1 ? "1 wire changed" : `${count} wires changed`),
  ends: (from: string, to: string) => (from === to ? from : `${from} at one end, ${to} at the other`),
  more: (count: number) => `${count} more`,
  chatters: (parts: string) => `${parts} chatters`,
  whole: "is whole again",
  doing: {
    off: "goes off",
    on: "comes on",
    forward: "runs forward",
    reverse: "runs in reverse",
    stalled: "is held still",
    "pulled-in": "pulls in",
    released: "lets go",
    supplying: "supplies",
    charging: "charges",
    melted: "melts",
    tripped: "trips",
    flashing: "flashes",
    dim: "burns dim",
  },
} as const;
