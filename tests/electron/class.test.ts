import { describe, expect, it } from "vitest";
import { ask, code, got, hostOn, ownFolder } from "./library.ts";

describe("the table of a class", () => {
  it("gives a PDF for any paper, and refuses a table of nobody", async () => {
    const host = hostOn(ownFolder());
    const row = {
      learner: "Ann",
      exercise: "Horns",
      result: "Right",
      named: [],
      minutes: [],
      readings: [],
      remark: "",
    };
    const { pdf, name, sheets } = await got(host, "print.class", { rows: [row], tasks: [], paper: "letter" });
    expect(Buffer.from(pdf, "base64").toString("latin1")).toMatch(/^%PDF-.*MediaBox \[0 0 612 792\]/s);
    expect({ name, sheets }).toEqual({ name: "Hand-ins of a class.pdf", sheets: 1 });
    expect(code(await ask(host, "print.class", { rows: [], tasks: [] }))).toBe("call-argument");
  });
});
