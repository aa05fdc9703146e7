import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { ok } from "../../core/base/outcome.ts";
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

describe("the marks of a class", () => {
  const mark = (sign: string, learner: string, isMastered: boolean) => ({
    id: sign.repeat(64),
    learner,
    exercise: "Horns",
    isMastered,
  });
  const [ann, bob] = [mark("a", "Ann", true), mark("b", "Bob", false)];

  it("are kept over a restart, each hand-in once as it was graded last, until a learner is forgotten", async () => {
    const folder = ownFolder();
    const first = hostOn(folder);
    expect(await got(first, "marks.keep", { marks: [bob, { ...ann, isMastered: false }] })).toEqual({
      marks: [{ ...ann, isMastered: false }, bob],
    });
    await got(first, "marks.keep", { marks: [ann] });
    await first.keeper.close();
    const later = hostOn(folder);
    expect(await got(later, "marks.list", {})).toEqual({ marks: [ann, bob] });
    expect(await got(later, "marks.forget", { learner: "Ann" })).toEqual({ marks: [bob] });
    expect(code(await ask(later, "marks.keep", { marks: [{ ...ann, id: "a" }] }))).toBe("call-argument");
  });
});

describe("a hand-in that is chosen as a file", () => {
  it("comes to the page as it is", async () => {
    const path = join(ownFolder(), "ann.handin.json");
    writeFileSync(path, "{}");
    const host = hostOn(ownFolder(), { chooseFile: async () => ok({ path }) });
    expect(await got(host, "files.open", {})).toEqual({ done: "handin", name: "ann.handin.json", text: "{}" });
  });
});
