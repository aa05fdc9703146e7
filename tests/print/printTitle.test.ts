import { describe, expect, test } from "vitest";
import { fileNameOf } from "../../electron/fileName.ts";
import { printTitle } from "../../electron/print/printTitle.ts";
import { type SheetAsk, sheetAsk } from "../../schemas/calls/print.ts";
import { sample } from "../samples/onTheBench.ts";

const VENTS = sample("1-roof-vents");
const HORN = sample("4-horn");

const named = (ask: Partial<SheetAsk> & Pick<SheetAsk, "what">, circuit = VENTS) =>
  fileNameOf(printTitle(circuit, sheetAsk.parse(ask)), "pdf");

describe("the name of a print", () => {
  test.each<[Partial<SheetAsk> & Pick<SheetAsk, "what">, string]>([
    [{ what: "sheet", page: VENTS.pages[1]!.id }, "circuit sheet, page 2"],
    [{ what: "sheet" }, "circuit sheet"],
    [{ what: "checklist", complaint: VENTS.checks[0]!.id }, "probe order"],
    [{ what: "table", connector: "X6" }, "position table X6"],
    [{ what: "table", connector: "X6", faults: ["W13:open"] }, "position table X6, with W13 broken"],
    [{ what: "straight", load: "M3" }, "straight branch of M3"],
    [{ what: "straight", complaint: VENTS.checks[0]!.id }, `straight branch of ${VENTS.checks[0]!.load}`],
  ])("asked as %j says the circuit and %s", (ask, shown) => {
    expect(named(ask)).toBe(`${VENTS.title}, ${shown}.pdf`);
  });

  test("says no page of the only page", () => {
    expect(HORN.pages.length).toBe(1);
    expect(named({ what: "sheet", page: HORN.pages[0]!.id }, HORN)).toBe(`${HORN.title}, circuit sheet.pdf`);
  });

  test("keeps what is shown where the circuit's title is long, and holds no sign that a system refuses", () => {
    const long = { ...VENTS, title: `a/b: ${"long ".repeat(60)}` };
    const name = named({ what: "table", connector: "X6" }, long);
    expect(name).toMatch(/, position table X6\.pdf$/);
    expect(name).not.toMatch(/[/\\:*?"<>|]/);
  });
});
