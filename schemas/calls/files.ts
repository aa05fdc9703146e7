import { z } from "zod";
import { CALL_LIMITS, type Call, nothing } from "./call.ts";
import { openedCircuit } from "./circuits.ts";

/** Endings of the files that a page may have written. */
export const FILE_ENDINGS = [
  "circuit.json",
  "job.json",
  "handin.json",
  "exercise.json",
  "wirefathom",
  "pdf",
  "svg",
  "html",
  "png",
  "gif",
  "csv",
  "txt",
] as const;

/** A bare file name with one of the endings: no folder in it, and no sign that some system refuses in a name. */
const fileName = z
  .string()
  .max(200)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: a file name must not hold them
  .regex(/^[^/\\:*?"<>|\u0000-\u001f. ][^/\\:*?"<>|\u0000-\u001f]*$/)
  .refine((name) => FILE_ENDINGS.some((ending) => name.endsWith(`.${ending}`)));

/** Calls that ask the person for a file. */
export const FILE_CALLS = {
  /**
   * Writes a file where the person says. `download`: this host has no dialog, and the page gives the content to the
   * browser itself. Refuses `file-unwritable`, `file-no-folder`.
   */
  "files.save": {
    argument: z.strictObject({
      name: fileName,
      content: z.string().max(CALL_LIMITS.content),
      encoding: z.enum(["text", "base64"]).default("text"),
    }),
    answer: z.union([
      z.strictObject({ done: z.literal("saved"), where: z.string() }),
      z.strictObject({ done: z.enum(["cancelled", "download"]) }),
    ]),
  },
  /**
   * Has the person choose a circuit file, takes it into the library and opens it. `choose`: this host has no dialog,
   * and the page has its own field for files, then calls `circuits.import`.
   */
  "files.open": {
    argument: nothing,
    answer: z.union([
      z.strictObject({ done: z.literal("opened"), opened: openedCircuit }),
      /** A job file: the page takes it up, on the circuit that it belongs to. */
      z.strictObject({ done: z.literal("job"), name: z.string(), text: z.string() }),
      /** An exercise, sealed as it is: the page opens it in its worker. */
      z.strictObject({ done: z.literal("exercise"), name: z.string(), text: z.string() }),
      /** A hand-in: it comes onto the instructor's desk. */
      z.strictObject({ done: z.literal("handin"), name: z.string(), text: z.string() }),
      z.strictObject({ done: z.enum(["cancelled", "choose"]) }),
    ]),
  },
} as const satisfies Readonly<Record<string, Call>>;
