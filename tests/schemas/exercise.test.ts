import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { sentence } from "../../core/base/words.ts";
import { verdictWith } from "../../core/lesson/cupboard.ts";
import type { Hidden } from "../../core/lesson/exercise.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import {
  formatExercise,
  isExerciseText,
  openForInstructor,
  openForLearner,
  readExercise,
} from "../../schemas/exercise.ts";
import { checkedHandin, formatHandin, isHandinText, readHandin } from "../../schemas/handin.ts";
import { ROUNDS_LIMITS } from "../../schemas/seal.ts";
import { codeOf, got } from "../edit/given.ts";
import { exerciseWith, HORN, LAMP, worked } from "../lesson/given.ts";

const PASSPHRASE = "grüne Birne 7";
const FEW = ROUNDS_LIMITS.least;
const HIDDEN: Hidden = { fault: "W4:open", seed: 7, note: "second bench" };
const { exercise, vehicle } = exerciseWith(LAMP, "W4:open", {
  told: "dark since the wash",
  hints: { count: 1, minutes: 5 },
});
/** The same signs but for the last. */
const flipped = (hex: string): string => hex.slice(0, -1) + (hex.endsWith("0") ? "1" : "0");

const text = got(await formatExercise(exercise, HIDDEN, PASSPHRASE, FEW));

describe("an exercise file", () => {
  test("comes back as it was written; the learner's program gets the vehicle, the instructor what is hidden", async () => {
    const file = got(readExercise(text));
    expect(file.exercise).toEqual(exercise);
    const learner = got(await openForLearner(file));
    expect(learner).not.toHaveProperty("hidden");
    expect(learner.vehicle.tries(LAMP.checks[0]!)).toBe("dead");
    const instructor = got(await openForInstructor(file, PASSPHRASE));
    expect(instructor.hidden).toEqual(HIDDEN);
    expect(instructor.id).toBe(learner.id);
    expect(isExerciseText(text)).toBe(true);
    expect(isHandinText(text)).toBe(false);
  });

  test("takes a passphrase typed in another spelling of the same signs, and no other", async () => {
    const file = got(readExercise(text));
    expect(codeOf(await openForInstructor(file, PASSPHRASE.normalize("NFD")))).toBe("not refused");
    expect(codeOf(await openForInstructor(file, "grune Birne 7"))).toBe("passphrase-wrong");
    expect(codeOf(await formatExercise(exercise, HIDDEN, "short", FEW))).toBe("passphrase-short");
  });

  test("tells nothing of the fault: all that is open is the same for every fault of one complaint, and as long", async () => {
    const check = LAMP.checks[0]!;
    const faults = ["W4:open", "E1:burnt-out", "X1-1:backed-out+X1-2:backed-out", "X1-1:corroded=200"];
    for (const fault of faults) {
      expect(verdictWith(LAMP, check, got(plantOf(LAMP, fault)).faults)).toBe("dead");
      const other = got(await formatExercise(exercise, { ...HIDDEN, fault }, PASSPHRASE, FEW));
      expect(other.length).toBe(text.length);
      expect(other.split('"seal"')[0]).toBe(text.split('"seal"')[0]);
      for (const secret of [fault, HIDDEN.note, PASSPHRASE, '"seed"']) expect(other).not.toContain(secret);
    }
  });

  test("made twice it is sealed in other bytes, and the sealed bytes are not those of the text", async () => {
    const again = got(await formatExercise(exercise, HIDDEN, PASSPHRASE, FEW));
    expect(again).not.toBe(text);
    const hex = Buffer.from(JSON.stringify(HIDDEN)).toString("hex");
    expect(again).not.toContain(hex.slice(0, 16));
  });

  const json = JSON.parse(text);
  const changed = (change: (file: typeof json) => void): string => {
    const copy = structuredClone(json);
    change(copy);
    return JSON.stringify(copy);
  };
  test.each<[string, (file: typeof json) => void]>([
    ["another complaint text", (file) => Object.assign(file, { told: "works now and then" })],
    ["another word", (file) => Object.assign(file, { word: "weak" })],
    ["more hints", (file) => Object.assign(file.hints, { count: 9 })],
    ["cheaper trim", (file) => Object.assign(file.circuit.access[0], { minutes: 0 })],
    ["a wire of other ohms", (file) => Object.assign(file.circuit.wires[0], { ohms: 5 })],
    ["a sealed sign", (file) => Object.assign(file.seal, { content: flipped(file.seal.content) })],
    ["the program's key", (file) => Object.assign(file.seal, { forProgram: flipped(file.seal.forProgram) })],
    ["the salt", (file) => Object.assign(file.seal, { salt: flipped(file.seal.salt) })],
    ["the rounds", (file) => Object.assign(file.seal, { rounds: FEW + 1 })],
    ["the instructor's key", (file) => Object.assign(file.seal, { forInstructor: flipped(file.seal.forInstructor) })],
  ])("changed after it was sealed (%s) it is refused to learner and instructor", async (_, change) => {
    const file = got(readExercise(changed(change)));
    for (const outcome of [await openForLearner(file), await openForInstructor(file, PASSPHRASE)]) {
      expect(codeOf(outcome)).toBe("exercise-changed");
      if (!outcome.ok) expect(sentence(outcome.refusal)).toMatch(/^\S.*\.$/);
    }
  });

  test("one that was made when the seal was bound to the open part alone still opens", async () => {
    const made = readFileSync(new URL("exercises/1-bound-to-open-part.exercise.json", import.meta.url));
    const file = got(readExercise(made));
    expect(got(await openForLearner(file)).exercise.complaint).toBe("low-horn");
    expect(got(await openForInstructor(file, "correct horse")).hidden.fault).toBe("W15:open");
  });

  test("laid out anew by an editor it is the same exercise", async () => {
    expect(codeOf(await openForLearner(got(readExercise(JSON.stringify(json)))))).toBe("not refused");
  });

  test("a fault that this program cannot plant there is refused without a word of it", async () => {
    const strange = got(await formatExercise(exercise, { ...HIDDEN, fault: "W4:evaporated" }, PASSPHRASE, FEW));
    const opened = await openForLearner(got(readExercise(strange)));
    expect(codeOf(opened)).toBe("exercise-version");
    expect(JSON.stringify(opened)).not.toContain("W4");
  });

  test.each([
    ["a circuit file", "exercise-format", JSON.stringify({ format: "wirefathom/circuit" })],
    ["a newer version", "file-newer", changed((file) => Object.assign(file, { version: 2 }))],
    ["an unknown field", "file-field-unknown", changed((file) => Object.assign(file, { fault: "W4:open" }))],
    ["a circuit of a newer version", "file-newer", changed((file) => Object.assign(file.circuit, { version: 2 }))],
    ["no circuit", "file-field-missing", changed((file) => Reflect.deleteProperty(file, "circuit"))],
    ["a wire to nowhere", "point-part", changed((file) => Object.assign(file.circuit.wires[0], { to: "Q1.1" }))],
    ["a check that is not there", "check-unknown", changed((file) => Object.assign(file, { complaint: "x" }))],
    ["too many rounds", "file-limit", changed((file) => Object.assign(file.seal, { rounds: 1e9 }))],
    ["a seal of other signs", "file-name", changed((file) => Object.assign(file.seal, { content: "xyz" }))],
    ["more than 60 V", "over-60-volts", changed((file) => Object.assign(file.circuit, { nominalVolts: 96 }))],
    ["a file cut off", "file-json", text.slice(0, 300)],
  ])("%s is refused with one sentence", (_, code, content) => {
    const read = readExercise(content);
    expect(codeOf(read)).toBe(code);
    if (!read.ok) expect(sentence(read.refusal)).toMatch(/^\S.*\.$/);
  });

  test("printed pages, photos and spots in them stay at home", () => {
    const picture = { sha256: "0".repeat(64), mime: "image/png", widthPx: 10, heightPx: 10 } as const;
    const corners = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ] as const;
    const pages = HORN.pages.map((page) => ({
      ...page,
      underlays: [{ id: "u1", title: "u", image: picture, corners }],
    }));
    const spot = { underlay: "u1", x: 1, y: 1 };
    const parts = HORN.parts.map((part) => ({ ...part, printed: spot }));
    const access = HORN.access.map((group) => ({ ...group, photo: picture }));
    const sent = exerciseWith({ ...HORN, pages, parts, access }, "W15:open").exercise;
    expect(JSON.stringify(sent)).not.toMatch(/underlay|photo|sha256/);
    expect(sent.circuit).toEqual(HORN);
  });
});

describe("a hand-in", () => {
  const { route } = worked(
    { exercise, vehicle },
    "throw S1=on",
    "probe F1.2",
    "hint",
    "open panel",
    "probe X1-2",
    "verdict W4:open by 1, 2",
  );
  const opened = async () => got(await openForLearner(got(readExercise(text))));
  const handin = async () => formatHandin("Ann Ode", await opened(), route);

  test("comes back as it was written, by whoever has the exercise", async () => {
    const file = got(await readHandin(await handin()));
    const { exercise: of, ...rest } = got(await checkedHandin(file, await opened()));
    expect(rest).toEqual({ learner: "Ann Ode", route });
    expect(of.title).toBe(exercise.title);
    expect(isHandinText(await handin())).toBe(true);
  });

  test("keeps ohms and amps as they were read", async () => {
    const read = worked({ exercise, vehicle }, "open panel", "unplug X1", "ohms X1-2", "plug in X1", "clamp S1.2");
    const file = got(await readHandin(await formatHandin("Ann Ode", await opened(), read.route)));
    expect(file.route).toEqual(read.route);
    expect(file.route[2]!.answer.shows!.ohms).toBeDefined();
    expect(file.route[4]!.answer.shows!.amps).toBe(0);
  });

  test("before the verdict it has nothing of the fault in it", async () => {
    const begun = await formatHandin("Ann Ode", await opened(), route.slice(0, -1));
    for (const secret of ["W4", HIDDEN.note]) expect(begun).not.toContain(secret);
  });

  test.each<[string, string, number | undefined, (file: ReturnType<typeof JSON.parse>) => void]>([
    ["another name", "handin-head", undefined, (file) => Object.assign(file, { learner: "Bob" })],
    ["another exercise", "handin-head", undefined, (file) => Object.assign(file.exercise, { title: "Other" })],
    ["another reading", "handin-edited", 5, (file) => Object.assign(file.route[4].answer.shows, { volts: 0 })],
    ["fewer minutes", "handin-edited", 4, (file) => Object.assign(file.route[3], { minutes: 0 })],
    ["another time", "handin-edited", 1, (file) => Object.assign(file.route[0], { time: "2026-03-02T09:00:00Z" })],
    ["another verdict", "handin-edited", 6, (file) => Object.assign(file.route[5].move, { suspect: "F1:blown" })],
    ["a move left out", "handin-edited", 3, (file) => file.route.splice(2, 1)],
    ["two moves exchanged", "handin-edited", 2, (file) => file.route.splice(1, 2, file.route[2], file.route[1])],
    ["an unknown field", "file-field-unknown", undefined, (file) => Object.assign(file.route[0], { note: "x" })],
    ["a newer version", "file-newer", undefined, (file) => Object.assign(file, { version: 2 })],
    ["another format", "handin-format", undefined, (file) => Object.assign(file, { format: "x" })],
  ])("edited by hand (%s) it is refused, and says where", async (_, code, number, change) => {
    const file = JSON.parse(await handin());
    change(file);
    const read = await readHandin(JSON.stringify(file));
    expect(codeOf(read)).toBe(code);
    if (read.ok) return;
    expect(read.refusal.about.number).toBe(number);
    expect(sentence(read.refusal)).toMatch(/^\S.*\.$/);
  });

  test("cut short, its chain holds but its signature does not", async () => {
    const file = JSON.parse(await handin());
    file.route.pop();
    expect(codeOf(await checkedHandin(got(await readHandin(JSON.stringify(file))), await opened()))).toBe(
      "handin-unsigned",
    );
  });

  test("a chain made anew by hand is not signed by the exercise; one of another make is another exercise", async () => {
    const again = got(await formatExercise(exercise, HIDDEN, PASSPHRASE, FEW));
    const other = got(await openForLearner(got(readExercise(again))));
    const { id } = await opened();
    const forged = await formatHandin("Ann Ode", { ...other, id }, route);
    expect(codeOf(await checkedHandin(got(await readHandin(forged)), await opened()))).toBe("handin-unsigned");
    const honest = await formatHandin("Ann Ode", other, route);
    expect(codeOf(await checkedHandin(got(await readHandin(honest)), await opened()))).toBe("handin-other");
  });
});
