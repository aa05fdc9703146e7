import type { CommandId } from "../commands/index.ts";

/**
 * Where a key is looked for: in the whole window, on the drawing, with a part or wire in hand, on the corners of a printed
 * page, on a control of the strip, in front of what a class sees.
 */
export type KeyPlace = "window" | "drawing" | "pen" | "print" | "strip" | "class";

/** What keys do one thing in one place. */
export interface KeyRow {
  readonly id: string;
  readonly words: string;
  readonly place: KeyPlace;
  /** The given ones, as `spelled` writes them. */
  readonly keys: readonly string[];
  /** True where no other key can be given: the system's own, and those that mean the same wherever they are pressed. */
  readonly stays?: true;
  /** The row whose key this one always shares. */
  readonly as?: string;
  /** The commands of core that it can come to. */
  readonly commands?: readonly CommandId[];
}

const ARROWS = ["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"] as const;

/** Every key of the page: what handles a press looks here what it means, and the sheet of keys prints it. */
export const KEY_ROWS = [
  { id: "undo", place: "window", keys: ["Ctrl+Z"], words: "Undo" },
  { id: "redo", place: "window", keys: ["Ctrl+Y", "Ctrl+Shift+Z"], words: "Redo" },
  { id: "find", place: "window", keys: ["Ctrl+F"], words: "Find a part, wire, colour, pin or place" },
  { id: "print", place: "window", keys: ["Ctrl+P"], words: "Print" },
  { id: "save-file", place: "window", keys: ["Ctrl+S"], words: "Save the circuit as a file" },
  { id: "open-file", place: "window", keys: ["Ctrl+O"], words: "Open a file" },
  { id: "library", place: "window", keys: ["Ctrl+W"], words: "Close the circuit, back to the library" },
  { id: "full-size", place: "window", keys: ["Ctrl+0"], words: "Show the drawing at 100\u00A0%" },
  { id: "whole-page", place: "window", keys: ["Ctrl+9"], words: "Show the whole page" },
  { id: "nearer", place: "window", keys: ["Ctrl++", "Ctrl+="], words: "Nearer" },
  { id: "farther", place: "window", keys: ["Ctrl+-"], words: "Farther" },
  { id: "class", place: "window", keys: ["F5"], words: "Class view: on a second screen, else over this whole one" },
  { id: "help", place: "window", keys: ["F1"], words: "Help on what is in front" },
  { id: "keys", place: "window", keys: ["Shift+F1", "?"], words: "Keys and commands" },

  { id: "begin", place: "drawing", stays: true, keys: ["Home"], words: "Go to the first point" },
  {
    id: "arrow",
    place: "drawing",
    stays: true,
    keys: ARROWS,
    words: "Walk the circuit from a point or wire, move a chosen part, or move the drawing",
    commands: ["move-part", "move-things"],
  },
  {
    id: "arrow-far",
    place: "drawing",
    stays: true,
    keys: ARROWS.map((key) => `Shift+${key}` as const),
    words: "Move a chosen part or the drawing further",
  },
  { id: "follow-back", place: "drawing", keys: [","], words: "Follow the wire one step towards the feed, over pages" },
  { id: "follow-on", place: "drawing", keys: ["."], words: "Follow the wire one step towards the return, over pages" },
  { id: "next-part", place: "drawing", stays: true, keys: ["PageDown"], words: "Next part" },
  { id: "previous-part", place: "drawing", stays: true, keys: ["PageUp"], words: "Previous part" },
  {
    id: "act",
    place: "drawing",
    stays: true,
    keys: ["Enter"],
    words: "Throw the switch that is chosen, or open its menu",
    commands: ["throw-control"],
  },
  {
    id: "position",
    place: "drawing",
    stays: true,
    keys: ["1", "2", "3", "4", "5", "6", "7", "8", "9"],
    words: "Throw the switch to its first, second, ... position; hold the key to hold it",
    commands: ["let-go"],
  },
  { id: "menu", place: "drawing", stays: true, keys: ["ContextMenu", "Shift+F10"], words: "Menu of what is chosen" },
  {
    id: "fault",
    place: "drawing",
    keys: ["F"],
    words: "Put a fault in, from the menu of what is chosen",
    commands: ["plant-fault"],
  },
  { id: "why", place: "drawing", keys: ["W"], words: "Why is it live, grounded or floating" },
  { id: "leave", place: "drawing", stays: true, keys: ["Escape"], words: "Close the card, then choose nothing" },
  { id: "in", place: "drawing", keys: ["+", "="], words: "Zoom in on what is chosen" },
  { id: "out", place: "drawing", keys: ["-"], words: "Zoom out" },
  { id: "fit", place: "drawing", stays: true, keys: ["Shift+1"], words: "Show the whole page" },
  {
    id: "wire",
    place: "drawing",
    keys: ["L"],
    words: "Draw wires; from the terminals that are chosen, several at once",
    commands: ["draw-wire", "draw-wire-to-wire"],
  },
  { id: "add-part", place: "drawing", keys: ["C"], words: "Open the catalogue to add a part", commands: ["add-part"] },
  { id: "turn", place: "drawing", keys: ["T"], words: "Turn", commands: ["turn-part", "turn-things"] },
  { id: "flip", place: "drawing", keys: ["M"], words: "Mirror", commands: ["flip-part", "flip-things"] },
  {
    id: "duplicate",
    place: "drawing",
    keys: ["Ctrl+D"],
    words: "Duplicate",
    commands: ["duplicate-things"],
  },
  {
    id: "arrange",
    place: "drawing",
    keys: ["A"],
    words: "Arrange what is chosen, or else the whole page",
    commands: ["arrange-parts"],
  },
  { id: "copy", place: "drawing", stays: true, keys: ["Ctrl+C"], words: "Copy" },
  { id: "cut", place: "drawing", stays: true, keys: ["Ctrl+X"], words: "Cut" },
  { id: "paste", place: "drawing", stays: true, keys: ["Ctrl+V"], words: "Paste", commands: ["paste"] },
  {
    id: "remove",
    place: "drawing",
    stays: true,
    keys: ["Delete", "Backspace"],
    words: "Delete",
    commands: ["remove-things"],
  },
  { id: "choose-all", place: "drawing", stays: true, keys: ["Ctrl+A"], words: "Choose everything on the page" },
  { id: "choose-net", place: "drawing", keys: ["J"], words: "Choose all wires that are joined with the chosen one" },
  { id: "choose-connector", place: "drawing", keys: ["H"], words: "Choose all wires on the same connector" },
  {
    id: "edit",
    place: "drawing",
    keys: ["F2", "Shift+F2"],
    words: "Edit the chosen part: label, designator, values",
    commands: ["relabel-part", "rename-part", "change-setting"],
  },
  {
    id: "plug",
    place: "drawing",
    keys: ["P"],
    words: "Pull the plug apart, or push it home",
    commands: ["pull-apart", "push-home"],
  },
  {
    id: "fuse",
    place: "drawing",
    keys: ["O"],
    words: "Take the fuse or relay out, or put it in",
    commands: ["take-out", "put-in"],
  },
  { id: "battery", place: "drawing", keys: ["B"], words: "Battery off or on", commands: ["battery"] },
  { id: "engine", place: "drawing", keys: ["E"], words: "Engine running or stopped", commands: ["engine"] },
  {
    id: "wrong",
    place: "drawing",
    keys: ["N"],
    words: "With nothing wrong, or with the fault",
    commands: ["show-faults"],
  },
  { id: "changed", place: "drawing", keys: ["D"], words: "Only what the last step changed, or everything" },
  { id: "time", place: "drawing", keys: ["I"], words: "Stop faults that come and go, or let them go on" },
  { id: "begin-traces", place: "drawing", keys: ["V"], words: "Reset min and max of all instruments" },
  { id: "rest", place: "drawing", keys: ["0"], words: "Everything at rest", commands: ["rest-all"] },

  {
    id: "pen-act",
    place: "pen",
    stays: true,
    keys: ["Enter"],
    words: "Place the part; begin, bend or end the wire; lead all that are gathered",
    commands: ["add-part"],
  },
  {
    id: "pen-gather",
    place: "pen",
    stays: true,
    keys: ["Shift+Enter"],
    words: "Gather this terminal, to lead several wires at once",
    commands: ["draw-wires"],
  },
  { id: "pen-arrow", place: "pen", stays: true, keys: ARROWS, words: "Move the part, or jump to the next terminal" },
  {
    id: "pen-arrow-far",
    place: "pen",
    stays: true,
    keys: ARROWS.map((key) => `Shift+${key}` as const),
    words: "Move the part further",
  },
  { id: "pen-turn", place: "pen", as: "turn", keys: ["T"], words: "Turn the part" },
  { id: "pen-flip", place: "pen", as: "flip", keys: ["M"], words: "Mirror the part" },
  { id: "pen-back", place: "pen", stays: true, keys: ["Backspace"], words: "Take the last bend of the wire back" },
  {
    id: "pen-leave",
    place: "pen",
    stays: true,
    keys: ["Escape"],
    words: "Give the wire or what is gathered up, then the tool",
  },

  {
    id: "print-arrow",
    place: "print",
    stays: true,
    keys: ARROWS,
    words: "Move the corner, or all of the page, by 1\u00A0mm",
    commands: ["move-underlay", "place-underlay", "crop-underlay"],
  },
  {
    id: "print-far",
    place: "print",
    stays: true,
    keys: ARROWS.map((key) => `Shift+${key}` as const),
    words: "Move it by 10\u00A0mm",
  },
  {
    id: "print-fine",
    place: "print",
    stays: true,
    keys: ARROWS.map((key) => `Alt+${key}` as const),
    words: "Move it by 0.2\u00A0mm",
  },
  { id: "print-larger", place: "print", keys: ["+", "="], words: "Make the page larger", commands: ["scale-underlay"] },
  { id: "print-smaller", place: "print", keys: ["-"], words: "Make the page smaller" },
  { id: "print-take", place: "print", stays: true, keys: ["Enter"], words: "Take it as it lies now" },
  { id: "print-leave", place: "print", stays: true, keys: ["Escape"], words: "Leave it as it was" },

  {
    id: "strip-next",
    place: "strip",
    stays: true,
    keys: ["ArrowRight", "ArrowDown"],
    words: "Next position of the control",
  },
  { id: "strip-previous", place: "strip", stays: true, keys: ["ArrowLeft", "ArrowUp"], words: "Previous position" },
  {
    id: "strip-set",
    place: "strip",
    stays: true,
    keys: ["Enter"],
    words: "Throw it there; where it springs back, pin it",
  },
  { id: "strip-hold", place: "strip", stays: true, keys: ["Space"], words: "Hold a position that springs back" },

  // Keys of the small devices that turn pages from across a room are among these.
  { id: "class-next", place: "class", stays: true, keys: ["ArrowRight", "ArrowDown", "PageDown"], words: "Next scene" },
  { id: "class-back", place: "class", stays: true, keys: ["ArrowLeft", "ArrowUp", "PageUp"], words: "Scene before" },
  { id: "class-play", place: "class", stays: true, keys: ["Space"], words: "Play the scenes, or pause" },
  { id: "class-blank", place: "class", keys: ["B"], words: "Blank the screen, or show it again" },
  { id: "class-cover", place: "class", keys: ["C"], words: "Cover the states up, or uncover them" },
  { id: "class-ask", place: "class", keys: ["Q"], words: "Ask the next question" },
  {
    id: "class-hand",
    place: "class",
    stays: true,
    keys: ["1", "2", "3", "4", "5", "6", "7", "8", "9"],
    words: "Count a hand for the first, second, ... answer",
  },
  { id: "class-hand-back", place: "class", stays: true, keys: ["Backspace"], words: "Take the last hand back" },
  {
    id: "class-reveal",
    place: "class",
    stays: true,
    keys: ["Enter"],
    words: "Show the answer, then the drawing alone",
  },
  { id: "class-larger", place: "class", keys: ["+", "="], words: "Larger words" },
  { id: "class-smaller", place: "class", keys: ["-"], words: "Smaller words" },
  { id: "class-leave", place: "class", stays: true, keys: ["Escape"], words: "Leave the class view" },
] as const satisfies readonly KeyRow[];

/** Id of a row of keys, of one in a place, and of one whose key a person can change. */
export type KeyId = (typeof KEY_ROWS)[number]["id"];
export type KeyIdOf<P extends KeyPlace> = Extract<(typeof KEY_ROWS)[number], { place: P }>["id"];
export type ChangeableId = Exclude<(typeof KEY_ROWS)[number], { stays: true } | { as: string }>["id"];

/** True for the name of a row. */
export function isKeyId(word: string): word is KeyId {
  return KEY_ROWS.some(({ id }) => id === word);
}

/** Every row whose key can be changed, in the order of the table. */
export const CHANGEABLE: readonly ChangeableId[] = KEY_ROWS.flatMap((row: KeyRow) =>
  isChangeable(row) ? [row.id as ChangeableId] : [],
);

/** Whether a person can give this row another key. */
export function isChangeable({ stays, as }: KeyRow): boolean {
  return stays === undefined && as === undefined;
}

/** The row of an id. */
export function rowOf(id: KeyId): KeyRow {
  return KEY_ROWS.find((row) => row.id === id)!;
}
