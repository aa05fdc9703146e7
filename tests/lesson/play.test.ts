import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { AT_START, type Play, passed, paused, played, scrubbed, stepped, timeOf } from "../../core/lesson/play.ts";

const LENGTHS = [8, 4, 10];

describe("scenes that are played", () => {
  test("stand still until they are begun, and go on where they were paused", () => {
    expect(passed(AT_START, 100, LENGTHS)).toEqual(AT_START);
    const begun = passed(played(AT_START, LENGTHS), 9, LENGTHS);
    expect(begun).toEqual({ at: 1, shown: 1, isPlaying: true });
    expect(passed(paused(begun), 100, LENGTHS)).toEqual({ at: 1, shown: 1, isPlaying: false });
  });

  test("end with the last one, and begin anew from there", () => {
    const over = passed(played(AT_START, LENGTHS), 1_000, LENGTHS);
    expect(over).toEqual({ at: 2, shown: 10, isPlaying: false });
    expect(played(over, LENGTHS)).toEqual({ ...AT_START, isPlaying: true });
  });

  test("are stepped one by one, no farther than there are", () => {
    const second = stepped(AT_START, 1, LENGTHS);
    expect(second.at).toBe(1);
    expect(stepped(second, -5, LENGTHS).at).toBe(0);
    expect(stepped(second, 5, LENGTHS).at).toBe(2);
  });

  test("a step begins its scene from the start and keeps on playing", () => {
    const playing: Play = { at: 0, shown: 6, isPlaying: true };
    expect(stepped(playing, 1, LENGTHS)).toEqual({ at: 1, shown: 0, isPlaying: true });
  });

  test("in many short ticks come where one long one does", () => {
    const ticks = fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { maxLength: 40 });
    fc.assert(
      fc.property(ticks, (all) => {
        const start = played(AT_START, LENGTHS);
        const slow = all.reduce((play, tick) => passed(play, tick, LENGTHS), start);
        const time = Math.min(
          all.reduce((sum, tick) => sum + tick, 0),
          22,
        );
        expect(timeOf(slow, LENGTHS)).toBeCloseTo(time, 6);
      }),
    );
  });

  test("are where they are scrubbed to, inside their length", () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 30, noNaN: true }), (to) => {
        const time = timeOf(scrubbed(AT_START, to, LENGTHS), LENGTHS);
        expect(time).toBeCloseTo(Math.min(Math.max(to, 0), 22), 9);
      }),
    );
  });
});
