import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { run } from "./run.ts";

const HORN = fileURLToPath(new URL("../../samples/4-horn.circuit.json", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "wirefathom-"));
afterAll(() => rmSync(folder, { recursive: true }));
const path = (name: string) => join(folder, name);

const SECRET = ["--passphrase", "correct horse"];
const EXERCISE = path("horn.exercise.json");
const make = (out: string, ...words: string[]) =>
  run("exercise", "make", HORN, ...SECRET, ...words, "--out", path(out));
const work = (...words: string[]) => run("exercise", "run", EXERCISE, ...words);
const doing = (...moves: string[]) => moves.flatMap((move) => ["--do", move]);

beforeAll(async () => {
  const by = ["--complaint", "low-horn", "--fault", "W15:open", "--hints", "1", "--access", "bonnet=3"];
  expect((await make("horn.exercise.json", ...by)).code).toBe(0);
});

describe("exercise", () => {
  it("is made by hand or by seed, and opened with the passphrase alone", async () => {
    const hidden = async (name: string) =>
      JSON.parse((await run("exercise", "open", path(name), ...SECRET, "--json")).out).hidden;
    expect(await hidden("horn.exercise.json")).toMatchObject({ fault: "W15:open", seed: null });
    expect((await make("one.exercise.json", "--seed", "5")).code).toBe(0);
    const one = await hidden("one.exercise.json");
    expect(one.way.length).toBeGreaterThan(0);
    expect(one.seed).toBe(5);
    const hard = ["--seed", "5", "--difficulty", "hard", "--complaint", "low-horn"];
    expect((await make("hard.exercise.json", ...hard)).code).toBe(0);
    const faults = JSON.parse((await run("exercise", "faults", HORN, "--complaint", "low-horn", "--json")).out).faults;
    const { fault } = await hidden("hard.exercise.json");
    expect(faults.find(({ id }: { id: string }) => id === fault).difficulty).toBe("hard");
    const shut = await run("exercise", "open", path("hard.exercise.json"));
    expect(shut.out).toContain("Complaint: Low horn sounds: ");
    expect(shut.out).not.toContain(fault);
    expect(shut.out).not.toContain("Hidden");
  });

  it("is worked on move by move, kept in a hand-in and gone on from", async () => {
    const [one, two] = [path("one.handin.json"), path("two.handin.json")];
    const first = await work(...doing("open fuse-box", "probe K1.87 @ S1=pressed"), "--learner", "Ann", "--save", one);
    expect(first.code).toBe(0);
    // Bonnet 3 and box 2, a throw, a probe with the button held by somebody else.
    expect(first.out).toMatch(
      /open fuse-box\n.*throw S1=pressed.*low-horn dead.*\n.*probe K1\.87, reading 1: 12\.\d+V\n6\.6 minutes so far\.\n$/,
    );
    const next = await work("--from", one, ...doing("verdict W15:open by 1"), "--save", two);
    expect(next.out).toMatch(/6\.6 minutes so far\.\nRight: W15 broken\.\n$/);
    expect(readFileSync(two, "utf8")).toContain('"learner": "Ann"');
    expect((await work("--from", one, ...doing("verdict F2:blown"))).out).toContain("Not that: it was W15 broken.");
    expect(JSON.parse((await work("--from", two, "--json")).out)).toMatchObject({
      minutes: 6.6,
      told: { isRight: true },
    });
  });

  it("keeps what was done before a wrong entry", async () => {
    const kept = path("kept.handin.json");
    const { code, complaint } = await work(...doing("throw S1=pressed", "look F2", "listen K1"), "--save", kept);
    expect([code, complaint]).toEqual([2, expect.stringMatching(/^F2 cannot be reached yet: .*\.\n$/)]);
    expect(JSON.parse(readFileSync(kept, "utf8")).route).toHaveLength(1);
  });

  it("is said at once to be more than the instruments can prove, where it was chosen so", async () => {
    const meter = ["--complaint", "low-horn", "--fault", "H1:open", "--instruments", "meter volts"];
    expect((await make("alike.exercise.json", ...meter)).out).toMatch(
      /\nNo reading that is allowed tells it from .*\.\n$/,
    );
  });

  it("takes the passphrase from a file", async () => {
    writeFileSync(path("words.txt"), "correct horse\n");
    expect((await run("exercise", "open", EXERCISE, "--passphrase-file", path("words.txt"))).out).toContain(
      "Hidden: W15 broken",
    );
  });

  it("refuses with one sentence", async () => {
    const edited = path("edited.exercise.json");
    writeFileSync(edited, readFileSync(EXERCISE, "utf8").replace('"tellsAtOnce": true', '"tellsAtOnce": false'));
    const bad = path("bad.handin.json");
    await work(...doing("throw S1=pressed"), "--learner", "Ann", "--save", bad);
    writeFileSync(bad, readFileSync(bad, "utf8").replace("Ann", "Bob"));
    const out = ["--out", path("x.exercise.json")];
    for (const [words, sentence] of [
      [["open", EXERCISE, "--passphrase", "correct mouse"], /^The passphrase does not open this exercise/],
      [["open", edited], /was changed after it was sealed/],
      [["open", HORN], /not an exercise file/],
      [["run", EXERCISE, "--from", bad], /was edited: the name Bob/],
      [["run", EXERCISE, "--from", EXERCISE], /not a hand-in/],
      [["run", EXERCISE, "--save", path("x.json")], /must end in \.handin\.json/],
      [["run", EXERCISE, "--do", "kick it"], /^kick it is nothing to do here/],
      [["make", HORN, ...SECRET, "--out", path("x.json"), "--seed", "1"], /must end in \.exercise\.json/],
      [["make", HORN, ...SECRET, ...out], /--fault FAULT, or --seed/],
      [["make", HORN, ...out, "--seed", "1"], /passphrase/],
      [["make", HORN, ...SECRET, ...out, "--fault", "W15:open"], /Say which function check fails/],
      [
        ["make", HORN, ...SECRET, ...out, "--fault", "W15:open", "--complaint", "high-horn", "--access", "roof=1"],
        /no access group roof/,
      ],
      [
        ["make", HORN, ...SECRET, ...out, "--fault", "H1:open", "--complaint", "high-horn"],
        /works in spite of H1:open/,
      ],
      [["make", HORN, ...SECRET, ...out, "--seed", "x"], /--seed takes a whole number/],
      [["make", HORN, ...SECRET, ...out, "--seed", "1", "--difficulty", "cruel"], /one of easy, medium, hard/],
      [["make", HORN, ...SECRET, ...out, "--seed", "1", "--instruments", "hammer"], /hammer is no instrument/],
      [["make", HORN, ...SECRET, ...out, "--seed", "1", "--access", "bonnet"], /GROUP=MINUTES/],
      [["make", HORN, "--passphrase", "short", ...out, "--seed", "1"], /at least 8 characters/],
      [["faults", HORN], /Say which function check fails/],
    ] as const) {
      const { code, complaint, out: said } = await run("exercise", ...words);
      expect([code, said, complaint]).toEqual([2, "", expect.stringMatching(sentence)]);
      expect(complaint).toMatch(/^[^\n]*\.\n$/);
    }
  });
});

describe("grade", () => {
  const [ann, bob, cy] = ["ann", "bob", "cy"].map((name) => path(`${name}.handin.json`)) as [string, string, string];
  const asked = ["--exercise", EXERCISE, ...SECRET];
  beforeAll(async () => {
    await work(...doing("verdict W15:open"), "--learner", "=Ann", "--save", ann);
    await work(...doing("throw S1=pressed", "verdict F2:blown"), "--learner", "Bob", "--save", bob);
    writeFileSync(cy, readFileSync(bob, "utf8").replace("Bob", "Cy"));
  });

  it("tells of each hand-in how it came out and how far it is proven; an edited one is a finding with its reason", async () => {
    const [csv, tasks, done] = [path("class.csv"), path("tasks.txt"), path("tasks.csv")];
    writeFileSync(tasks, "Find an open feed: Horns\n");
    const { out, code } = await run(
      "grade",
      ann,
      bob,
      cy,
      ...asked,
      "--csv",
      csv,
      "--tasks",
      tasks,
      "--tasks-csv",
      done,
    );
    expect(code).toBe(1);
    expect(out).toMatch(
      /^=Ann, Horns: right, not proven \(W15 broken, others 9\d.%\)\n {2}0\.0 min, the probe order \d+\.\d; 0 readings\n {2}Missing: /,
    );
    expect(out).toContain("Bob, Horns: wrong (F2 ");
    expect(out).toContain("cy.handin.json: This hand-in was edited: the name Cy");
    expect(out).toMatch(/\n\nLearner {2}Find an open feed\n=Ann {5}tried\nBob {6}tried\n$/);
    expect(readFileSync(csv, "utf8").split("\r\n")[1]).toMatch(/^'=Ann,Horns,"right, not proven",W15 broken,9\d,/);
    expect(readFileSync(done, "utf8")).toBe("Learner,Find an open feed\r\n'=Ann,tried\r\nBob,tried\r\n");
    const json = await run("grade", ann, bob, ...asked, "--json");
    expect(json.code).toBe(0);
    expect(JSON.parse(json.out).marked.map((each: { grade: { is: string } }) => each.grade.is)).toEqual([
      "right",
      "wrong",
    ]);
  });

  it("refuses with one sentence", async () => {
    const empty = path("empty.txt");
    writeFileSync(empty, "# none\n");
    for (const [words, sentence] of [
      [[ann, ...SECRET], /--exercise FILE/],
      [[ann, "--exercise", EXERCISE], /passphrase/],
      [[ann, "--exercise", EXERCISE, "--passphrase", "correct mouse"], /does not open/],
      [[ann, ...asked, "--tasks", empty], /task list is empty/],
      [[...asked], /Missing required argument/],
    ] as const) {
      const { code, complaint } = await run("grade", ...words);
      expect([code, complaint]).toEqual([2, expect.stringMatching(sentence)]);
    }
  });
});

describe("questions", () => {
  it("come with choices and then answers, the same for the same seed", async () => {
    const first = await run("questions", HORN, "--seed", "4", "--count", "3");
    expect(first.code).toBe(0);
    expect(first.out).toMatch(/^Horns\n\n1\. .*\n[\s\S]*\n {3}a\) [\s\S]*\n3\. [\s\S]*\nAnswers\n\n1\. [a-d]\) /);
    expect(first.out).toContain(") shows the idea that ");
    expect((await run("questions", HORN, "--seed", "4", "--count", "3")).out).toBe(first.out);
    const json = await run(
      "questions",
      HORN,
      "--in",
      "S1=pressed",
      "--fault",
      "X10-1:corroded=20",
      "--count",
      "2",
      "--json",
    );
    const { questions } = JSON.parse(json.out);
    expect(questions).toHaveLength(2);
    expect(questions[0].text).toContain("S1 held pressed; what is wrong: X10-1 corroded");
  });

  it("are refused with one sentence", async () => {
    for (const [words, sentence] of [
      [["--count", "0"], /cannot be made/],
      [["--seed", "x"], /--seed takes a whole number/],
      [["--in", "S9=on"], /no control S9/],
      [["--fault", "W1:gone"], /has no fault gone/],
    ] as const) {
      const { code, complaint } = await run("questions", HORN, ...words);
      expect([code, complaint]).toEqual([2, expect.stringMatching(sentence)]);
    }
  });
});

describe("lesson", () => {
  it("lists the lessons that come with the program, with their files", async () => {
    const { lessons } = JSON.parse((await run("lesson", "--json")).out);
    expect(lessons).toHaveLength(4);
    for (const { file, exercises } of lessons)
      expect([file, ...exercises].filter((each) => !existsSync(each))).toEqual([]);
    expect((await run("lesson")).out).toMatch(
      /^Power, ground and floating: 7 scenes, 12 questions\n {3}\S+\.circuit\.json\n/,
    );
  });

  it("says scene by scene what is asked, what is right and what is to be seen", async () => {
    const board = fileURLToPath(new URL("../../samples/12-reversing-motor.circuit.json", import.meta.url));
    const told = await run("lesson", board);
    expect(told.code).toBe(0);
    expect(told.out).toMatch(/Scene 5: Up, return joint apart \(S1=up,apart:X7\)\n1\. .*X1-5[^?]*\?\n {3}a\) 0\.0 V\n/);
    expect(told.out).toContain("1. c) 12.6 V.");
    const { scenes } = JSON.parse((await run("lesson", board, "--json")).out);
    expect(scenes[3].questions[0]).toMatchObject({ asked: { point: "X3-1b" }, right: 3 });
  });

  it("says plainly where there is nothing to teach, and how many questions are lost", async () => {
    const bare = JSON.parse(readFileSync(HORN, "utf8"));
    writeFileSync(path("bare.circuit.json"), JSON.stringify({ ...bare, scenes: [] }));
    expect(await run("lesson", path("bare.circuit.json"))).toMatchObject({
      code: 2,
      complaint: expect.stringContaining("no scenes"),
    });
    const asks = [{ label: "Rest", condition: {}, questions: [{ asks: "state", point: "G1.+" }] }];
    writeFileSync(
      path("asks.circuit.json"),
      JSON.stringify({ ...bare, scenes: asks, reach: { ...bare.reach, G1: { doNotProbe: "sealed" } } }),
    );
    expect((await run("lesson", path("asks.circuit.json"))).out).toContain(
      "cannot be answered by the circuit as it is now",
    );
  });
});
