import { z } from "zod";
import { sentence } from "../core/base/words.ts";
import { FACTOR_LIMITS } from "../core/diagnose/weighing.ts";
import { ownKeysProblem } from "../core/edit/keys/giveKey.ts";
import { CHANGEABLE } from "../core/edit/keys/rows.ts";
import { CLASS_WORDS } from "../core/lesson/wall.ts";
import { MOST_NAME, plainLine } from "./plainLine.ts";

/** Signs of a school's task list at most: some hundred tasks with their exercises. */
const MOST_TASKS = 20_000;
/** A key as it is spelt has at most so many characters. */
const MOST_SPELLING = 20;
/** By row of the table of keys: the key that the person gave it. All of them together are judged too. */
const ownKeys = z.partialRecord(z.enum(CHANGEABLE), z.string().max(MOST_SPELLING)).superRefine((own, context) => {
  const problem = ownKeysProblem(own);
  if (problem) context.addIssue({ code: "custom", message: sentence(problem) });
});

/** What a person can set, by name. A new setting is a line here and its first value below. */
export const settingsShape = z.strictObject({
  /** The person's own name, for sheets, hand-ins and those who share the library; "" where they gave none. */
  person: plainLine(MOST_NAME),
  theme: z.enum(["system", "light", "dark"]),
  /** Symbols as IEC draws them, or as in North America. */
  look: z.enum(["iec", "na"]),
  /** Size of everything outside the drawing; above 1 for a projector. */
  scale: z.number().min(0.75).max(2.5),
  motion: z.enum(["system", "still"]),
  /** What spring-back positions do when clicked: held while pressed, or latched until clicked again. */
  springs: z.enum(["hold", "latch"]),
  paper: z.enum(["a4", "a3", "letter", "tabloid"]),
  ink: z.enum(["black", "colour"]),
  /** Width of the side panel in px. */
  panelWidth: z.int().min(240).max(1_600),
  /** Height of the words that a class sees, px on a screen of 1080 lines. */
  classWords: z.int().min(CLASS_WORDS.least).max(CLASS_WORDS.most),
  /** How many times as likely as guessed kinds of things fail in this shop, each with where that is known from. */
  shop: z
    .array(
      z.strictObject({
        of: z.string().min(1).max(FACTOR_LIMITS.of),
        factor: z.number().min(FACTOR_LIMITS.least).max(FACTOR_LIMITS.most),
        source: z.string().min(1).max(FACTOR_LIMITS.source),
      }),
    )
    .max(FACTOR_LIMITS.count),
  /** The school's task list as it was typed, one task a line. */
  tasks: z.string().max(MOST_TASKS),
  /** Keys that the person gave in place of the given ones. */
  keys: ownKeys,
});

/** All settings. */
export type Settings = z.infer<typeof settingsShape>;

/** The settings of a first start. */
export const FIRST_SETTINGS: Settings = {
  person: "",
  theme: "system",
  look: "iec",
  scale: 1,
  motion: "system",
  springs: "hold",
  paper: "a4",
  ink: "black",
  panelWidth: 440,
  classWords: CLASS_WORDS.least,
  shop: [],
  tasks: "",
  keys: {},
};
