import { z } from "zod";
import { LIMITS } from "../limits.ts";
import { CALL_LIMITS, type Call, circuit, shortWords } from "./call.ts";

/** Calls that make files to hand on. */
export const EXPORT_CALLS = {
  /** The circuit as one page of HTML that works by itself, and a name for its file. */
  "export.takeHome": {
    argument: z.strictObject({ circuit }),
    answer: z.strictObject({ html: z.string().max(CALL_LIMITS.content), name: z.string() }),
  },
  /** A page of the circuit in a condition as SVG with its font in it. Refuses as `print` does. */
  "export.svg": {
    argument: z.strictObject({
      circuit,
      page: shortWords,
      /** `S1=on,S5=open`; rest where empty. */
      condition: z.string().max(20_000).default(""),
      faults: z.array(z.string().max(LIMITS.textLength)).max(100).default([]),
      look: z.enum(["iec", "na"]).default("iec"),
      palette: z.enum(["light", "dark", "black"]).default("light"),
    }),
    answer: z.strictObject({ svg: z.string().max(CALL_LIMITS.content), name: z.string() }),
  },
} as const satisfies Readonly<Record<string, Call>>;
