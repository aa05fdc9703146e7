import { ok } from "../../core/base/outcome.ts";
import { fileNameOf } from "../fileName.ts";
import { printAside } from "../print/aside.ts";
import type { AnswersOf } from "./host.ts";

/** What is answered where sheets are printed. */
export const PRINT_ANSWERS: AnswersOf<"print.pdf"> = {
  "print.pdf": async ({ circuit, paper, ink, ...ask }, host) => {
    const palette = ink === "black" ? "black" : "light";
    const printed = await printAside(host.printer, { circuit, ask, paper, palette, made: host.now() });
    if (!printed.ok) return printed;
    const { pdf, title, sheets } = printed.value;
    return ok({ pdf: Buffer.from(pdf).toString("base64"), name: fileNameOf(title, "pdf"), sheets });
  },
};
