import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Outcome } from "../../core/base/outcome.ts";
import { controlsOf } from "../../core/circuit/points.ts";
import { possibleFaults } from "../../core/diagnose/possible.ts";
import { type Bench, benchFor } from "../../core/edit/bench.ts";
import { changeSetting } from "../../core/edit/commands/changeSetting.ts";
import { healAll } from "../../core/edit/commands/healAll.ts";
import { letGo } from "../../core/edit/commands/letGo.ts";
import { movePart } from "../../core/edit/commands/movePart.ts";
import { observeCheck } from "../../core/edit/commands/observeCheck.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { pullApart } from "../../core/edit/commands/pullApart.ts";
import { pushHome } from "../../core/edit/commands/pushHome.ts";
import { recolourWire } from "../../core/edit/commands/recolourWire.ts";
import { relabelPart } from "../../core/edit/commands/relabelPart.ts";
import { replaceFuse } from "../../core/edit/commands/replaceFuse.ts";
import { restAll } from "../../core/edit/commands/restAll.ts";
import { throwControl } from "../../core/edit/commands/throwControl.ts";
import { turnPart } from "../../core/edit/commands/turnPart.ts";
import type { Edit } from "../../core/edit/edit.ts";
import { cancel, type Desk, deskFor, keep, mark, namesOf, perform, redo, undo } from "../../core/edit/history.ts";
import { historyOf, historyText } from "../../core/edit/historyText.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import { faultText } from "../../core/live/fault.ts";
import { OBSERVED_WORDS } from "../../core/live/judge.ts";
import { codeOf, expectSame, expectSound, frozen, got, LATCH, SMALL, VENTS } from "./given.ts";

const small = deskFor(benchFor(SMALL));
type Make = (bench: Bench) => Outcome<Edit>;

/** The desk after some commands. */
function done(desk: Desk, ...makes: readonly Make[]): Desk {
  return makes.reduce((now, make) => got(perform(now, got(make(now.bench)))), desk);
}

const to =
  (x: number): Make =>
  (bench) =>
    movePart(bench, "M1", { x, y: 30 });
const label =
  (text: string): Make =>
  (bench) =>
    relabelPart(bench, "M1", text);

describe("undo and redo", () => {
  test("go back and forth over single edits, and say what they would undo", () => {
    const desk = done(small, label("One"), to(62), label("Two"));
    expect(namesOf(desk)).toEqual({ undo: "label motor M1", redo: null });
    const once = got(undo(desk));
    expect(once.bench.circuit.parts.find(({ id }) => id === "M1")?.label).toBe("One");
    expect(namesOf(once)).toEqual({ undo: "move motor M1", redo: "label motor M1" });
    const none = got(undo(got(undo(once))));
    expectSame(none.bench, small.bench);
    expect(codeOf(undo(none))).toBe("nothing-to-undo");
    const all = got(redo(got(redo(got(redo(none))))));
    expectSame(all.bench, desk.bench);
    expect(codeOf(redo(all))).toBe("nothing-to-redo");
  });

  test("an edit after an undo forgets what was undone", () => {
    const desk = done(got(undo(done(small, label("One")))), label("Two"));
    expect(namesOf(desk).redo).toBeNull();
    expect(desk.history.done).toHaveLength(1);
  });

  test("an edit that is refused leaves the desk alone", () => {
    const edit: Edit = { name: "x", changes: [{ change: "remove", list: "parts", id: "M9" }] };
    expect(codeOf(perform(small, edit))).toBe("edit-gone");
  });
});

describe("gestures", () => {
  const grouped = (desk: Desk, make: Make, group: string): Desk => got(perform(desk, got(make(desk.bench)), group));

  test("edits under one key are one step, whose inverse undoes them all", () => {
    let desk = done(small, label("One"));
    for (const x of [61, 62, 63, 64]) desk = grouped(desk, to(x), "drag 1");
    expect(desk.history.done).toHaveLength(2);
    expect(desk.history.done[1]!.edit.changes).toHaveLength(1);
    expectSame(got(undo(desk)).bench, done(small, label("One")).bench);
    expectSame(got(redo(got(undo(desk)))).bench, desk.bench);
  });

  test("another key, none, or an undo between begins another step", () => {
    const first = grouped(small, to(61), "a");
    expect(grouped(first, to(62), "b").history.done).toHaveLength(2);
    expect(done(first, to(62)).history.done).toHaveLength(2);
    const back = got(undo(grouped(first, label("One"), "b")));
    expect(grouped(back, to(62), "a").history.done).toHaveLength(2);
    expect(grouped(got(redo(got(undo(first)))), to(62), "a").history.done).toHaveLength(2);
  });

  test("a button pressed and let go is one step that keeps what it latched", () => {
    const desk = deskFor(benchFor(LATCH));
    const pressed = grouped(desk, (bench) => throwControl(bench, "S1", "in"), "press 1");
    const gone = grouped(pressed, (bench) => letGo(bench, "S1"), "press 1");
    expect(gone.history.done).toHaveLength(1);
    expectSame(got(undo(gone)).bench, desk.bench);
    expectSame(got(redo(got(undo(gone)))).bench, gone.bench);
  });
});

describe("drags", () => {
  test("one that is abandoned leaves no trace, not even of what could be done again", () => {
    const before = got(undo(done(small, label("One"), label("Two"))));
    const dragged = done(mark(before), to(61), to(62));
    expect(namesOf(dragged).redo).toBeNull();
    expect(cancel(dragged)).toBe(before);
    expect(cancel(before)).toBe(before);
  });

  test("one that is kept is one step, and one without a step is none", () => {
    const before = done(small, label("One"));
    const kept = keep(done(mark(before), to(61), to(62), to(63)));
    expect(kept.history.done).toHaveLength(2);
    expectSame(got(undo(kept)).bench, before.bench);
    expect(keep(mark(before))).toEqual(before);
  });

  test("does not join what was done before it under the same key", () => {
    const before = got(perform(small, got(to(61)(small.bench)), "drag"));
    const marked = mark(before);
    const kept = keep(got(perform(marked, got(to(62)(marked.bench)), "drag")));
    expect(kept.history.done).toHaveLength(2);
    expectSame(got(undo(kept)).bench, before.bench);
  });

  test("an undo in the middle of one undoes all of it", () => {
    const before = done(small, label("One"));
    expectSame(got(undo(done(mark(before), to(61), to(62)))).bench, before.bench);
  });
});

describe("a history that is kept", () => {
  const desk = got(undo(got(undo(done(small, label("One"), to(62), label("Two"), to(64), label("Drei ü €"))))));

  test("comes back the same and still undoes", () => {
    const read = got(historyOf(historyText(desk.history)));
    expect(read).toEqual(desk.history);
    expectSame(got(undo(deskFor(frozen(desk.bench), read))).bench, got(undo(desk)).bench);
  });

  test("leaves out what is furthest from the present, and never takes more bytes than it may", () => {
    const whole = Buffer.byteLength(historyText(desk.history));
    for (let bytes = 64; bytes <= whole + 64; bytes += 37) {
      const text = historyText(desk.history, bytes);
      expect(Buffer.byteLength(text)).toBeLessThanOrEqual(bytes);
      const { done, undone } = got(historyOf(text));
      expect(done).toEqual(desk.history.done.slice(desk.history.done.length - done.length));
      expect(undone).toEqual(desk.history.undone.slice(desk.history.undone.length - undone.length));
    }
    expect(got(historyOf(historyText(desk.history, whole + 64)))).toEqual(desk.history);
  });

  test.each([
    ["history-damaged", ""],
    ["history-damaged", "[]"],
    ["history-damaged", "null"],
    ["history-damaged", '{"version":1,"done":[]}'],
    ["history-damaged", '{"version":1,"done":[{"edit":1,"inverse":2,"group":null}],"undone":[]}'],
    ["history-damaged", step({ change: "paint" })],
    ["history-damaged", step({ change: "bench", field: "circuit", value: {} })],
    ["history-damaged", step({ change: "bench", field: "condition" })],
    ["history-damaged", step({ change: "item", list: "toString", id: "M1", field: "label" })],
    ["history-damaged", step({ change: "entry", record: "constructor", key: "x" })],
    ["history-damaged", step({ change: "add", list: "parts", at: 0, item: null })],
    ["history-newer", '{"version":2}'],
  ])("is refused as %s: %s", (code, text) => expect(codeOf(historyOf(text))).toBe(code));

  function step(change: object): string {
    const edit = { name: "x", changes: [change] };
    return JSON.stringify({ version: 1, done: [{ edit, inverse: edit, group: null }], undone: [] });
  }
});

// ---------------------------------------------------------------- any commands in any order

/** What should be: every bench so far as a copy, and which of them is the present one; the same at the last mark. */
interface Model {
  benches: readonly Bench[];
  at: number;
  marked: { readonly benches: readonly Bench[]; readonly at: number } | null;
}
interface Real {
  desk: Desk;
}

function expectModel(model: Model, { desk }: Real): void {
  expectSame(desk.bench, model.benches[model.at]!);
}

/** Picks a command by lot from what the bench has; the same numbers always give the same command. */
function commandFor(bench: Bench, kind: number, pick: number): Outcome<Edit> {
  const { circuit } = bench;
  const one = <T>(list: readonly T[]): T => list[pick % list.length]!;
  const part = one(circuit.parts).id;
  const makes: readonly (() => Outcome<Edit>)[] = [
    () =>
      throwControl(
        bench,
        one(controlsOf(circuit)).key,
        one(one(controlsOf(circuit)).control.positions.toReversed()).name,
      ),
    () => letGo(bench, one(controlsOf(circuit)).key),
    () => restAll(bench),
    () =>
      pullApart(bench, one([...circuit.connectors, ...circuit.parts.filter(({ kind: of }) => of === "connector")]).id),
    () => pushHome(bench, one(bench.condition.apart ?? [""])),
    () => plantFault(bench, faultText(one(possibleFaults(circuit)).faults[0]!)),
    () => healAll(bench),
    () => replaceFuse(bench, one(circuit.parts.filter(({ kind: of }) => of === "fuse")).id),
    () => observeCheck(bench, one(circuit.checks).id, one(OBSERVED_WORDS)),
    () => movePart(bench, part, { x: pick % 90, y: pick % 60 }),
    () => turnPart(bench, part, pick % 2 === 0 ? "clockwise" : "back"),
    () => relabelPart(bench, part, `label ${pick % 5}`),
    () =>
      changeSetting(bench, one(circuit.parts.filter(({ kind: of }) => of === "fuse")).id, "amps", `${1 + (pick % 9)}A`),
    () => recolourWire(bench, one(circuit.wires).id, one(["RD", "BK/WH", ""])),
  ];
  return makes[kind % makes.length]!();
}

class Do implements fc.Command<Model, Real> {
  readonly kind: number;
  readonly pick: number;
  readonly group: string | null;
  constructor(kind: number, pick: number, group: string | null) {
    this.kind = kind;
    this.pick = pick;
    this.group = group;
  }
  check = (): boolean => true;
  run(model: Model, real: Real): void {
    const edit = commandFor(real.desk.bench, this.kind, this.pick);
    if (!edit.ok) return;
    const before = real.desk.history.done.length;
    const next = perform(real.desk, edit.value, this.group);
    // What a command gives can be done: it refuses beforehand.
    real.desk = got(next);
    const isJoined = real.desk.history.done.length === before;
    const past = model.benches.slice(0, isJoined ? model.at : model.at + 1);
    model.benches = [...past, frozen(real.desk.bench)];
    model.at = model.benches.length - 1;
    expectSound(real.desk.bench);
    expect(liveNow(real.desk.bench).after).toEqual(liveNow(frozen(real.desk.bench)).after);
  }
  toString = (): string => `do ${this.kind} ${this.pick} ${this.group ?? ""}`;
}

class Undo implements fc.Command<Model, Real> {
  check = (): boolean => true;
  run(model: Model, real: Real): void {
    const from = model.marked && model.at > model.marked.at ? model.marked.at + 1 : model.at;
    model.benches = keptBenches(model);
    const next = undo(real.desk);
    expect(next.ok).toBe(from > 0);
    if (!next.ok) return;
    real.desk = next.value;
    model.at = from - 1;
    model.marked = null;
    expectModel(model, real);
  }
  toString = (): string => "undo";
}

class Redo implements fc.Command<Model, Real> {
  check = (): boolean => true;
  run(model: Model, real: Real): void {
    const next = redo(real.desk);
    expect(next.ok).toBe(model.at < model.benches.length - 1);
    if (!next.ok) return;
    real.desk = next.value;
    model.at += 1;
    model.marked = null;
    expectModel(model, real);
  }
  toString = (): string => "redo";
}

/** The model's benches with a drag as one step. */
function keptBenches({ benches, at, marked }: Model): readonly Bench[] {
  if (!marked || at <= marked.at) return benches;
  return [...benches.slice(0, marked.at + 1), benches[at]!];
}

class Mark implements fc.Command<Model, Real> {
  check = (): boolean => true;
  run(model: Model, real: Real): void {
    model.benches = keptBenches(model);
    model.at = model.marked && model.at > model.marked.at ? model.marked.at + 1 : model.at;
    model.marked = { benches: model.benches, at: model.at };
    real.desk = mark(real.desk);
    expectModel(model, real);
  }
  toString = (): string => "mark";
}

class Cancel implements fc.Command<Model, Real> {
  check = (model: Readonly<Model>): boolean => model.marked !== null;
  run(model: Model, real: Real): void {
    const { desk } = real;
    real.desk = cancel(desk);
    expect(real.desk).toBe(desk.mark);
    model.benches = model.marked!.benches;
    model.at = model.marked!.at;
    model.marked = null;
    expectModel(model, real);
  }
  toString = (): string => "cancel";
}

class Keep implements fc.Command<Model, Real> {
  check = (model: Readonly<Model>): boolean => model.marked !== null;
  run(model: Model, real: Real): void {
    real.desk = keep(real.desk);
    const isMoved = model.at > model.marked!.at;
    model.benches = keptBenches(model);
    if (isMoved) model.at = model.marked!.at + 1;
    model.marked = null;
    expectModel(model, real);
  }
  toString = (): string => "keep";
}

/** The program is ended and started again: bench and history come back from JSON. */
class Restart implements fc.Command<Model, Real> {
  check = (model: Readonly<Model>): boolean => model.marked === null;
  run(model: Model, real: Real): void {
    const { bench, history } = real.desk;
    real.desk = deskFor(frozen(bench), got(historyOf(historyText(history, Number.POSITIVE_INFINITY))));
    expect(real.desk.history).toEqual(history);
    expectModel(model, real);
  }
  toString = (): string => "restart";
}

const natural = fc.nat(1000);
const group = fc.option(fc.constantFrom("a", "b"), { nil: null });
const COMMANDS = [
  fc.tuple(natural, natural, group).map((given) => new Do(...given)),
  fc.tuple(natural, natural, group).map((given) => new Do(...given)),
  fc.tuple(natural, natural, group).map((given) => new Do(...given)),
  fc.constant(new Undo()),
  fc.constant(new Undo()),
  fc.constant(new Redo()),
  fc.constant(new Mark()),
  fc.constant(new Cancel()),
  fc.constant(new Keep()),
  fc.constant(new Restart()),
];

describe("any commands in any order", () => {
  test.each([
    ["a small circuit", SMALL, 100],
    ["sample 1", VENTS, 12],
  ] as const)("on %s: undo and redo end where they should, a cancelled drag leaves no trace", (_, circuit, numRuns) => {
    fc.assert(
      fc.property(fc.commands(COMMANDS, { maxCommands: 40, size: "max" }), (commands) => {
        const begin = () => ({
          model: { benches: [benchFor(circuit)], at: 0, marked: null } as Model,
          real: { desk: deskFor(benchFor(circuit)) },
        });
        const { model, real } = begin();
        fc.modelRun(() => ({ model, real }), commands);
        let { desk } = { desk: keep(real.desk) };
        for (let back = undo(desk); back.ok; back = undo(desk)) desk = back.value;
        expectSame(desk.bench, benchFor(circuit));
      }),
      { seed: 3, numRuns },
    );
  });
});
