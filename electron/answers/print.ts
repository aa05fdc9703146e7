import { type Outcome, ok } from "../../core/base/outcome.ts";
import type { Answer } from "../../schemas/calls.ts";
import { fileNameOf } from "../fileName.ts";
import { type Printed, printAside } from "../print/aside.ts";
import { readyUnders } from "../print/undersOf.ts";
import type { AnswersOf } from "./host.ts";

/** What is answered where sheets are printed. */
export const PRINT_ANSWERS: AnswersOf<"print.pdf" | "print.class"> = {
  "print.pdf": async ({ circuit, paper, ink, under: sent, ...ask }, host) => {
    const palette = ink === "black" ? "black" : "light";
    const ready = sent.map(({ page, jpeg }) => ({ page, jpeg: Buffer.from(jpeg, "base64") }));
    const under = readyUnders(circuit, ask, ready);
    if (!under.ok) return under;
    const job = { circuit, ask, paper, palette, under: under.value, made: host.now() } as const;
    return answered(await printAside(host.printer, job));
  },

  "print.class": async ({ paper, ...ofClass }, host) =>
    answered(await printAside(host.printer, { ofClass, paper, palette: "black", made: host.now() })),
};

function answered(printed: Outcome<Printed>): Outcome<Answer<"print.pdf">> {
  if (!printed.ok) return printed;
  const { pdf, title, sheets } = printed.value;
  return ok({ pdf: Buffer.from(pdf).toString("base64"), name: fileNameOf(title, "pdf"), sheets });
}
