import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Outcome } from "../../core/base/outcome.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { COMMANDS, type CommandId } from "../../core/edit/commands/index.ts";
import type { Edit } from "../../core/edit/edit.ts";
import { type Desk, deskFor, perform, redo, undo } from "../../core/edit/history.ts";
import { CASES } from "../edit/commandCases.ts";
import { expectSame, expectSound, frozen, got } from "../edit/given.ts";

// What commands are given here is what their cases give them, on whatever bench the commands before have left: most of
// it fits the samples of the cases, some of it nothing at all. So a command that has cases takes part, and all must have.

type Give = (bench: Bench, ...given: unknown[]) => Outcome<Edit>;

const commandOf = (id: CommandId): Give => COMMANDS.find((command) => command.id === id)!.make as unknown as Give;

/** Everything that some case gives some command, good or bad. */
const GIVEN: readonly (readonly [CommandId, readonly unknown[]])[] = COMMANDS.flatMap(({ id }) => [
  ...CASES[id].good.map(([, ...given]) => [id, given] as const),
  ...CASES[id].bad.map(([, , ...given]) => [id, given] as const),
]);

/** The desk after a command, sound; as it was where the command refuses. */
function tried(desk: Desk, id: CommandId, given: readonly unknown[]): Desk {
  const edit = commandOf(id)(desk.bench, ...given);
  if (!edit.ok) {
    expect(edit.refusal.code).toMatch(/^[a-z0-9-]+$/);
    return desk;
  }
  const next = got(perform(desk, edit.value));
  expectSound(next.bench);
  return next;
}

const followers = fc.array(fc.constantFrom(...GIVEN), { minLength: 4, maxLength: 14 });

describe("every command, and any others after it", () => {
  test.each(COMMANDS.map(({ id }) => id))("%s: the circuit stays sound; undo and redo give the same bytes", (id) => {
    const { good } = CASES[id];
    fc.assert(
      fc.property(fc.nat(good.length - 1), followers, (which, others) => {
        const [first, ...given] = good[which]!;
        const start = frozen(first);
        let desk = tried(deskFor(first), id, given);
        expect(desk.bench).not.toBe(first);
        const benches = [start, frozen(desk.bench)];
        for (const [next, what] of others) {
          const was = desk.bench;
          desk = tried(desk, next, what);
          if (desk.bench !== was) benches.push(frozen(desk.bench));
        }
        for (const bench of benches.slice(0, -1).toReversed()) {
          desk = got(undo(desk));
          expectSame(desk.bench, bench);
        }
        for (const bench of benches.slice(1)) {
          desk = got(redo(desk));
          expectSame(desk.bench, bench);
        }
      }),
      { seed: 12, numRuns: 2 },
    );
  });
});
