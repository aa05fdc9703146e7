import { ok } from "../../core/base/outcome.ts";
import type { AnswersOf } from "./host.ts";

/** What is answered about the program itself. */
export const ABOUT_ANSWERS: AnswersOf<"about" | "reports.keep"> = {
  about: async (_, { version, keeper: { place, folder }, reports }) => {
    const library = place.where === "here" ? folder : place.name;
    return ok({ version, runsOn: reports.runsOn, library, reports: reports.folder });
  },

  "reports.keep": async (mishap, { reports }) => ok(reports.keep(mishap)),
};
