import { mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { run, VENTS } from "./run.ts";

const folder = mkdtempSync(join(tmpdir(), "wirefathom-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** Writes a file into the test's folder and returns its path. */
function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

/** One sentence: one line, a capital or a name first, a full stop last, no code and no stack in it. */
function isOneSentence(text: string): boolean {
  return /^\S.*\.\n$/.test(text) && !text.includes("Error") && !text.includes("    at ");
}

describe("wrong entries", () => {
  const vents = JSON.parse(readFileSync(VENTS, "utf8"));
  const huge = file("huge.circuit.json", "");
  truncateSync(huge, 200_000_000);
  const high = file("high.json", JSON.stringify({ ...vents, nominalVolts: 400 }));
  const cases: readonly (readonly [string, readonly string[]])[] = [
    ["a missing file", ["live", join(folder, "none.json")]],
    ["a folder", ["live", folder]],
    ["a file of 200 MB", ["live", huge]],
    [
      "a picture",
      ["live", file("picture.png", Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13]))],
    ],
    ["an empty file", ["live", file("empty.json", "")]],
    ["a text", ["live", file("text.txt", "dear colleague")]],
    ["a file cut off", ["live", file("cut.json", readFileSync(VENTS, "utf8").slice(0, 5000))]],
    ["a newer version", ["live", file("newer.json", JSON.stringify({ ...vents, version: 2 }))]],
    ["an unknown field", ["live", file("field.json", JSON.stringify({ ...vents, colour: "red" }))]],
    [
      "a dangling wire",
      ["live", file("dangling.json", JSON.stringify({ ...vents, wires: [{ id: "W1", from: "G1.+", to: "F99.1" }] }))],
    ],
    ["an unknown control", ["live", VENTS, "--in", "S99=on"]],
    ["an impossible position", ["live", VENTS, "--in", "S5=sideways"]],
    ["a condition that is none", ["live", VENTS, "--in", "S5"]],
    ["an unknown part in a fault", ["live", VENTS, "--fault", "M99:open"]],
    ["an unknown fault", ["live", VENTS, "--fault", "M3:tired"]],
    ["a fault with a bad number", ["live", VENTS, "--fault", "W13:ohms=many"]],
    ["a fault with a number out of limits", ["live", VENTS, "--fault", "W13:ohms=-4"]],
    ["an unknown point", ["why", VENTS, "S5.9"]],
    ["nothing of the circuit", ["why", VENTS, "Q99"]],
    ["a command that is none", ["wy", VENTS]],
    ["a point that is none", ["why", VENTS, "wire thirteen"]],
    ["an unknown connector", ["table", VENTS, "--connector", "X99"]],
    ["an order without a complaint", ["order", VENTS]],
    ["an unknown check", ["order", VENTS, "--complaint", "none"]],
    [
      "an unknown observation",
      ["order", VENTS, "--complaint", "middle-open-own", "--observed", "rear-open-own=perhaps"],
    ],
    ["minutes that are none", ["order", VENTS, "--complaint", "middle-open-own", "--minutes", "soon"]],
    ["a reading without a condition", ["order", VENTS, "--complaint", "middle-open-own", "--read", "X5-4:11.9V"]],
    [
      "a reading at a point that is none",
      ["order", VENTS, "--complaint", "middle-open-own", "--read", "X5-9 @ S1=on : 11.9V"],
    ],
    [
      "a reading in an impossible condition",
      ["order", VENTS, "--complaint", "middle-open-own", "--read", "X5-4 @ S1=sideways : 11.9V"],
    ],
    ["a reading of 400 V", ["order", VENTS, "--complaint", "middle-open-own", "--read", "X5-4 @ S1=on : 400V"]],
    ["a reading in watts", ["order", VENTS, "--complaint", "middle-open-own", "--read", "X5-4 @ S1=on : 3W"]],
    [
      "a reading that is no number",
      ["order", VENTS, "--complaint", "middle-open-own", "--read", "X5-4 @ S1=on : lots"],
    ],
    ["a lamp where none may hang", ["order", VENTS, "--complaint", "middle-open-own", "--read", "U1-2 @ S1=on : dim"]],
    ["a battery of 24 V", ["order", VENTS, "--complaint", "middle-open-own", "--battery", "24"]],
    ["a branch sheet without a complaint", ["print", VENTS, "--what", "branches", "--out", join(folder, "a.pdf")]],
    [
      "a branch sheet of no depth",
      [
        "print",
        VENTS,
        "--what",
        "branches",
        "--complaint",
        "middle-open-own",
        "--depth",
        "0",
        "--out",
        join(folder, "a.pdf"),
      ],
    ],
    ["an order on 400 V", ["order", high, "--complaint", "middle-open-own"]],
    ["a table on 400 V", ["table", high, "--connector", "X5"]],
    [
      "a checklist on 400 V",
      ["print", high, "--what", "checklist", "--complaint", "middle-open-own", "--out", join(folder, "a.pdf")],
    ],
    [
      "a printed table on 400 V",
      ["print", high, "--what", "table", "--connector", "X5", "--out", join(folder, "a.pdf")],
    ],
    [
      "a printed branch on 400 V",
      ["print", high, "--what", "straight", "--load", "M3", "--out", join(folder, "a.pdf")],
    ],
    ["a sheet that is none", ["print", VENTS, "--what", "poster", "--out", join(folder, "a.pdf")]],
    ["a handover page without a complaint", ["print", VENTS, "--what", "handover", "--out", join(folder, "a.pdf")]],
    ["a proof of what is still being looked for", ["proof", VENTS, "--complaint", "middle-open-own"]],
    ["a proof of a fault that is none", ["proof", VENTS, "--complaint", "middle-open-own", "--fault", "M3:tired"]],
    ["a proof of another fault", ["proof", VENTS, "--complaint", "middle-open-own", "--fault", "M1:open"]],
    ["a proof at 400 V", ["proof", high, "--complaint", "middle-open-own", "--fault", "M3:open"]],
    [
      "more than a handover page holds",
      [
        ...["print", VENTS, "--what", "handover", "--complaint", "middle-open-own", "--fault", "M3:open"],
        ...["--done", "and ".repeat(240), "--out", join(folder, "a.pdf")],
      ],
    ],
    [
      "a reading after the repair that is none",
      [
        ...["print", VENTS, "--what", "handover", "--complaint", "middle-open-own", "--fault", "M3:open"],
        ...["--read-after", "X99-1 @ S1=on : 12V", "--out", join(folder, "a.pdf")],
      ],
    ],
    ["an ending that is none", ["print", VENTS, "--what", "sheet", "--out", join(folder, "a.doc")]],
    ["printed pages under an SVG", ["print", VENTS, "--what", "sheet", "--underlay", "--out", join(folder, "a.svg")]],
    ["a folder that is not there", ["print", VENTS, "--what", "sheet", "--out", join(folder, "no", "a.pdf")]],
    ["an unknown page", ["print", VENTS, "--what", "sheet", "--page", "p99", "--out", join(folder, "a.pdf")]],
    ["an unknown paper", ["print", VENTS, "--what", "sheet", "--paper", "a9", "--out", join(folder, "a.pdf")]],
    ["an unknown command", ["paint", VENTS]],
    ["an unknown option", ["live", VENTS, "--loud"]],
    ["a missing file name", ["live"]],
  ];
  it.each(cases)("%s gets one plain sentence and exit code 2", async (_, words) => {
    const { out, complaint, code } = await run(...words);
    expect({ out, code, sentence: isOneSentence(complaint), complaint }).toEqual({
      out: "",
      code: 2,
      sentence: true,
      complaint,
    });
  });

  it("leaves no half-written file behind", () => {
    expect(readdirSync(folder).filter((name) => name.endsWith(".part") || name.startsWith("a."))).toEqual([]);
  });
});

describe("commands", () => {
  it("export writes a list, and refuses an ending or a list that it does not know", async () => {
    const file = join(folder, "wires.csv");
    expect(await run("export", VENTS, "--what", "wires", "--out", file)).toMatchObject({ code: 0, complaint: "" });
    expect(readFileSync(file, "utf8")).toContain("W1,G1.+,F1.1,RD,16,");
    expect((await run("export", VENTS, "--what", "wires", "--out", join(folder, "wires.pdf"))).code).toBe(2);
    expect((await run("export", VENTS, "--what", "dreams", "--out", file)).code).toBe(2);
    const picture = ["--what", "picture", "--out", join(folder, "vents.png")];
    expect((await run("export", VENTS, ...picture, "--times", "3")).complaint).toContain("3 is no size");
    expect((await run("export", VENTS, ...picture, "--page", "p9")).complaint).toContain("no page p9");
  });

  it("live gives state, volts and amps of every wire and terminal as JSON", async () => {
    const { out, code } = await run("live", VENTS, "--in", "S1=on,S5=open", "--json");
    const { condition, settled, terminals, wires, parts, notes } = JSON.parse(out);
    expect({ code, condition, settled, notes }).toEqual({
      code: 0,
      condition: { set: { S1: "on", S5: "open" } },
      settled: true,
      notes: [],
    });
    expect(terminals["X5-6"].state).toBe("powered");
    expect(terminals["S5.6"]).toEqual({
      volts: expect.closeTo(12.2, 0),
      state: "powered",
      sourceOhms: expect.any(Number),
    });
    expect(wires.W17).toMatchObject({ state: ["grounded", "grounded"], amps: expect.closeTo(3, 1) });
    expect(parts.M3).toMatchObject({ doing: "forward", level: 1 });
  });

  it("live ends with a finding where a fuse melts, and says which and why", async () => {
    const { out, code } = await run("live", VENTS, "--in", "S1=on,S5=open", "--fault", "W16:short-to-ground");
    expect(code).toBe(1);
    expect(out).toContain("Fuse F4 melts");
  });

  it("why names the path in order", async () => {
    const { out, code } = await run("why", VENTS, "X5-4", "--in", "S1=on,S5=open");
    expect(code).toBe(0);
    const path = /Fed from (.*?)\.\n/s.exec(out)![1]!;
    const places = ["G1", "F1", "K1", "F4", "S2", "SP1", "S5"].map((part) => path.indexOf(part));
    expect(places).toEqual([...places].sort((one, other) => one - other));
    expect(places).not.toContain(-1);
  });

  it("table has a row for each pin and both halves", async () => {
    const { out } = await run("table", VENTS, "--connector", "X5", "--json");
    const { rows, columns } = JSON.parse(out);
    expect(rows.map((row: { pin: string }) => row.pin)).toEqual(["1", "2", "4", "5", "6"]);
    expect(new Set(columns.map((column: { plugged: boolean }) => column.plugged))).toEqual(new Set([true, false]));
  });

  it("order starts with sweeps at the opened switch and adds up to one", async () => {
    const { out, code } = await run(
      "order",
      VENTS,
      "--complaint",
      "middle-open-own",
      "--observed",
      "rear-open-own=works",
      "--observed",
      "middle-open-master=dead",
      "--json",
    );
    const { steps, suspects, elsewhere } = JSON.parse(out);
    expect(code).toBe(0);
    expect(steps[0]).toMatchObject({ sweepOf: "S5", connector: "X5", black: "battery -", access: "middle-switch" });
    const all = [...suspects, ...JSON.parse(out).cleared].reduce(
      (sum: number, each: { probability: number }) => sum + each.probability,
      0,
    );
    expect(all + elsewhere).toBeCloseTo(1, 6);
    expect(steps.every((step: { expect: { low: number; high: number } }) => step.expect.low <= step.expect.high)).toBe(
      true,
    );
  });

  it("check finds nothing wrong with the sample", async () => {
    expect(await run("check", VENTS)).toMatchObject({ code: 0, complaint: "" });
  });

  it.each([
    ["sheet", "pdf"],
    ["checklist", "pdf"],
    ["table", "pdf"],
    ["table", "svg"],
    ["checklist", "html"],
    ["branches", "pdf"],
  ])("print writes a %s as %s", async (what, ending) => {
    const path = join(folder, `${what}-out.${ending}`);
    const { code, complaint } = await run(
      "print",
      VENTS,
      "--what",
      what,
      "--page",
      "p2",
      "--complaint",
      "middle-open-own",
      "--connector",
      "X5",
      "--out",
      path,
    );
    expect({ code, complaint }).toEqual({ code: 0, complaint: "" });
    const written = readdirSync(folder).filter((name) => name.startsWith(`${what}-out`) && name.endsWith(ending));
    expect(written.length).toBeGreaterThan(0);
    expect(readFileSync(join(folder, written[0]!)).subarray(0, 4).toString()).toMatch(
      ending === "pdf" ? /%PDF/ : /<(svg|!do)/,
    );
  });

  it.each([
    ["proof", "pdf"],
    ["proof", "html"],
    ["handover", "svg"],
    ["handover", "pdf"],
  ])("print writes a %s of what was found as %s", async (what, ending) => {
    const path = join(folder, `${what}-found.${ending}`);
    const asked = ["--complaint", "middle-open-own", "--fault", "M3:open", "--done", "New motor.", "--paper", "letter"];
    const { code, complaint, out } = await run("print", VENTS, "--what", what, ...asked, "--out", path);
    expect({ code, complaint }).toEqual({ code: 0, complaint: "" });
    expect(out).toMatch(/\d sheets?\n$/);
    if (ending === "svg") expect(readFileSync(path, "utf8")).toContain("New motor.");
  });

  it("proof says what to read before and after, what to repeat and what to learn anew", async () => {
    const given = ["proof", VENTS, "--complaint", "middle-open-own", "--fault", "X32-1:corroded=22"];
    const { code, out, complaint } = await run(...given);
    expect({ code, complaint }).toEqual({ code: 0, complaint: "" });
    expect(out).toMatch(/X32-1a +X32-1b +S1=on,S5=open +11\.\d\d V +0\.00 – 0\.04 V/);
    expect(out).toContain("end stops");
    const { rows, checks, masked } = JSON.parse((await run(...given, "--json")).out);
    expect(rows[0].before).toBeGreaterThan(rows[0].expect.high);
    expect(rows[0].after).toBeLessThanOrEqual(rows[0].expect.high);
    expect(checks.map(({ id }: { readonly id: string }) => id)).toContain("middle-close-master");
    expect(masked.length).toBeGreaterThan(3);
  });

  it("proof takes what the readings leave where nothing is named", async () => {
    const read = ["SP1.3 @ S1=on : 12.6V", "X5-6 @ S1=on : 0V", "X5-6 @ S1=on : dark", "SP1.3 @ S1=on : bright"];
    const typed = read.flatMap((each) => ["--read", each]);
    const { out, code } = await run("proof", VENTS, "--complaint", "middle-open-own", "--json", ...typed);
    expect(code).toBe(0);
    expect(JSON.parse(out).found).toBe("W13:open");
  });

  it("order takes readings in and goes on from them", async () => {
    const given = ["order", VENTS, "--complaint", "middle-open-own", "--json"];
    const before = JSON.parse((await run(...given)).out);
    const { out, code } = await run(...given, "--read", "X5-6 @ S1=on : 0.02V", "--read", "X5-6 @ S1=on : dark");
    const after = JSON.parse(out);
    expect(code).toBe(0);
    expect(after.suspects.length).toBeLessThan(before.suspects.length / 2);
    expect(after.cleared.length).toBeGreaterThan(0);
    expect(after.expectedMinutes).toBeLessThan(before.expectedMinutes);
  });

  it("order names readings that cannot both be right", async () => {
    const { out } = await run(
      "order",
      VENTS,
      "--complaint",
      "middle-open-own",
      "--read",
      "SP1.3 @ S1=on : 0.0V",
      "--read",
      "X5-6 @ S1=on : 12.6V",
    );
    expect(out).toContain("cannot both be right with one fault");
  });

  it.each(["--help", "live --help", "order --help", "print --help"])("%s teaches and ends well", async (words) => {
    const { out, code } = await run(...words.split(" "));
    expect(code).toBe(0);
    expect(out).toContain("Usage:");
  });
});

describe("where current runs", () => {
  const file = (name: string): string => VENTS.replace("1-roof-vents", name);

  it("shares: what hangs on a ground, with amps, limits and what its opening does", async () => {
    const { out, code } = await run("shares", file("2-exterior-lights"), "GP6");
    expect(code).toBe(0);
    expect(out).toContain("At most 4.8 A with S1 parking, S3 held pressed.");
    expect(out).toMatch(/E5 +2\.2 A/);
    expect(out).toContain("E6 dead");
    const json = JSON.parse((await run("shares", file("2-exterior-lights"), "GP6", "--json")).out);
    expect(json.sharers.map(({ part }: { part: string }) => part)).toEqual(["E5", "E6", "E7"]);
  });

  it("sneaks: what turns with one place open, in sentences", async () => {
    const { out, code } = await run("sneaks", file("7-charging"));
    expect(code).toBe(0);
    expect(out).toContain("With GP5 off its stud and S2 on: E1 comes on");
  });

  it("jumper: the sentence that names the fuse, and a finding", async () => {
    const { out, code } = await run("jumper", VENTS, "F4.2", "GP2.stud", "--in", "S1=on");
    expect(code).toBe(1);
    expect(out).toContain("247 A would flow through F4 (25 A): it melts within 0.1 s.");
    expect(out).toContain("It is a dead short from feed to ground");
  });

  it.each([
    ["shares", VENTS, "M1"],
    ["shares", VENTS, "Q1"],
    ["jumper", VENTS, "F4.2", "F4.2"],
    ["jumper", VENTS, "F4.2", "nothing"],
    ["jumper", VENTS, "F4.2", "GP2.stud", "--fuse", "ten"],
    ["jumper", VENTS, "F4.2", "GP2.stud", "--fuse", "400A"],
  ])("refuse %s %s %s in one sentence", async (...words) => {
    const { complaint, out, code } = await run(...words);
    expect(code).toBe(2);
    expect(out).toBe("");
    expect(isOneSentence(complaint)).toBe(true);
  });
});
