import { z } from "zod";
import { JOB_LIMITS } from "../../core/diagnose/job.ts";
import { FACTOR_LIMITS } from "../../core/diagnose/weighing.ts";
import { LIMITS } from "../limits.ts";
import { base64Length, CALL_LIMITS, type Call, circuit, shortWords } from "./call.ts";

/** Hand-ins, learners and tasks that are printed at once at most. */
const CLASS_LIMIT = 2_000;
/** Signs of the list of all moves that told nothing. */
const MOST_WASTED = 40_000;

const typed = z.string().max(LIMITS.textLength);

/** What a printed sheet shows, in the spellings of the command line. */
export const sheetAsk = z.strictObject({
  what: z.enum(["sheet", "checklist", "branches", "wiggle", "table", "straight", "budget", "proof", "handover"]),
  /** Page of the circuit, for a sheet; every page where absent. */
  page: shortWords.exactOptional(),
  /** `S1=on,S5=open`; rest where empty. */
  condition: z.string().max(20_000).default(""),
  /** `W13:open` and the like; for a proof run and a handover page what was found. */
  faults: z.array(typed).max(100).default([]),
  /** The function check that fails, for a checklist or a branch sheet; the one whose load a straight branch follows. */
  complaint: shortWords.exactOptional(),
  /** `rear-open=works` and the like. */
  observed: z.array(typed).max(LIMITS.checks).default([]),
  /** What was read, `X5-6 @ S1=on : 11.9V` and the like. */
  read: z.array(typed).max(LIMITS.readings).default([]),
  /** Volts of the battery at rest, measured. */
  battery: shortWords.exactOptional(),
  /** Milliamps expected of the sleeping vehicle, `50`. */
  sleeping: shortWords.exactOptional(),
  /** What brings on a complaint that comes and goes, `hot,wet`. */
  when: shortWords.exactOptional(),
  /** What was read while places were moved, `X5 : 2.1..11.8`. */
  wiggled: z.array(typed).max(LIMITS.readings).default([]),
  /** What weighs otherwise than guessed on this circuit, `M3:seized=3: bulletin 12`, and in the shop, `motor=2: own records`. */
  weigh: z.array(typed).max(FACTOR_LIMITS.count).default([]),
  shop: z.array(typed).max(FACTOR_LIMITS.count).default([]),
  /** Verdicts of earlier jobs on this circuit that were filed and done. */
  solved: z.array(z.string().max(JOB_LIMITS.suspect)).max(CALL_LIMITS.rows).default([]),
  /** Rows that a branch sheet is deep at most. */
  depth: z.int().min(1).max(LIMITS.branchDepth).exactOptional(),
  /** Connector of a table; the circuit's first where absent. */
  connector: shortWords.exactOptional(),
  /** Load of a straight branch or a drop budget. */
  load: shortWords.exactOptional(),
  /** What was read after the repair, for a handover page. */
  readAfter: z.array(typed).max(LIMITS.readings).default([]),
  /** This very vehicle, and who works on it: in the head of sheets with rows; the vehicle on a handover page too. */
  vehicle: typed.exactOptional(),
  technician: typed.exactOptional(),
  /** What a handover page says in people's own words. */
  told: typed.exactOptional(),
  done: typed.exactOptional(),
  after: typed.exactOptional(),
  watch: typed.exactOptional(),
  /** Number of the job. */
  number: shortWords.exactOptional(),
  look: z.enum(["iec", "na"]).default("iec"),
});
/** What a printed sheet shows, checked. */
export type SheetAsk = z.output<typeof sheetAsk>;

const lines = z.array(typed).max(10);

/** The table of a class as it is printed: words that were made of the grades. */
const classPrint = z.strictObject({
  rows: z
    .array(
      z.strictObject({
        learner: typed,
        exercise: typed,
        result: typed,
        named: lines,
        minutes: lines,
        readings: z.array(z.string().max(MOST_WASTED)).max(10),
        remark: typed,
      }),
    )
    .min(1)
    .max(CLASS_LIMIT),
  tasks: z
    .array(
      z.strictObject({
        learner: typed,
        done: z.array(typed).max(CLASS_LIMIT),
        tried: z.array(typed).max(CLASS_LIMIT),
      }),
    )
    .max(CLASS_LIMIT),
});

const printed = z.strictObject({ pdf: z.string().max(CALL_LIMITS.content), name: z.string(), sheets: z.int() });

/** Calls that put sheets on paper. */
export const PRINT_CALLS = {
  /** The sheets as a PDF in base64, by the painters of the command line, with a name for its file. Refuses as `print` does. */
  "print.pdf": {
    argument: sheetAsk.extend({
      circuit,
      /** What lies under pages of the circuit, as a JPEG that fills the room for the drawing. */
      under: z
        .array(z.strictObject({ page: shortWords, jpeg: z.base64().max(base64Length(LIMITS.pictureBytes)) }))
        .max(LIMITS.pages)
        .default([]),
      paper: z.enum(["a4", "a3", "letter", "tabloid"]).default("a4"),
      ink: z.enum(["black", "colour"]).default("black"),
    }),
    answer: printed,
  },
  /** The table of a class as a PDF in base64, in black. */
  "print.class": {
    argument: classPrint.extend({ paper: z.enum(["a4", "a3", "letter", "tabloid"]).default("a4") }),
    answer: printed,
  },
} as const satisfies Readonly<Record<string, Call>>;
