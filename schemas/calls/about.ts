import { z } from "zod";
import { mishapShape } from "../mishap.ts";
import { type Call, nothing } from "./call.ts";

/** Calls about the program itself. */
export const ABOUT_CALLS = {
  /** What the program is, and where it keeps things. */
  about: {
    argument: nothing,
    answer: z.strictObject({
      version: z.string(),
      /** What it runs on, and the system. */
      runsOn: z.string(),
      /** Where the library lies: a folder of this machine or the name of a server; and the folder of reports. */
      library: z.string(),
      reports: z.string(),
    }),
  },
  /** Keeps the report of a fault of the page beside the library; `file` is null where it cannot be written. */
  "reports.keep": {
    argument: mishapShape,
    answer: z.strictObject({ text: z.string(), file: z.string().nullable() }),
  },
} as const satisfies Readonly<Record<string, Call>>;
