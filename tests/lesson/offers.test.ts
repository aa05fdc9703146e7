import { describe, expect, test } from "vitest";
import { INSTRUMENTS } from "../../core/diagnose/reading.ts";
import { asDrawn } from "../../core/lesson/asDrawn.ts";
import { type Attempt, attemptAfter, begun, checksSeen, loadsNow, moved } from "../../core/lesson/attempt.ts";
import { moveText } from "../../core/lesson/moveText.ts";
import { moveWords } from "../../core/lesson/moveWords.ts";
import { type Offer, offersAt, type Spot } from "../../core/lesson/offers.ts";
import { exerciseWith, HORN, LAMP, worked } from "./given.ts";

const given = exerciseWith(LAMP, "W4:open");
const told = (offers: readonly Offer[]) =>
  offers.map(({ move, minutes, refusal }) => `${moveText(move)} ${refusal?.code ?? minutes}`);
const at = (id: string, is: Spot["is"] = "point") => ({ is, id });

describe("what can be done at a place", () => {
  test("behind trim the trim comes first, and what waits for it says so", () => {
    expect(told(offersAt(begun(given.exercise), at("E1.1"))).slice(0, 2)).toEqual([
      "open panel 5",
      "probe X1-1 move-trim",
    ]);
    const open = worked(given, "open panel");
    expect(told(offersAt(open, at("E1.1")))).toEqual([
      "probe X1-1 0.5",
      "ohms X1-1 0.5",
      "clamp X1-1 1",
      "4 A lamp X1-1 0.8",
      "4 A lamp battery+/X1-1 0.8",
      "0.25 A lamp X1-1 0.8",
      "0.25 A lamp battery+/X1-1 0.8",
      "look X1 0.8",
      "unplug X1 0.5",
    ]);
  });

  test("a fuse is looked at, taken out, renewed; a lamp in its place waits until it is out", () => {
    expect(told(offersAt(begun(given.exercise), at("F1", "part")))).toEqual([
      "look F1 0.3",
      "take out F1 0.3",
      "renew F1 0.4",
    ]);
    const inPlace = (attempt: Attempt) =>
      told(offersAt(attempt, at("F1.1"), "F1.2")).filter((text) => /lamp F1.1\/F1.2/.test(text));
    expect(inPlace(begun(given.exercise))[0]).toBe("4 A lamp F1.1/F1.2 move-fuse-in");
    expect(inPlace(worked(given, "take out F1"))[0]).toBe("4 A lamp F1.1/F1.2 0.8");
  });

  test("a switch is thrown to each other position, a wire is read at both ends", () => {
    expect(told(offersAt(begun(given.exercise), at("S1", "part"))).slice(0, 2)).toEqual([
      "throw S1=on 0.1",
      "look S1 0.3",
    ]);
    const ends = offersAt(begun(given.exercise), at("W2", "wire")).flatMap(({ move }) =>
      move.do === "probe" ? [move.red] : [],
    );
    expect(new Set(ends)).toEqual(new Set(["F1.2", "S1.1"]));
  });

  test("what lies behind the airbag can be thrown, and all else there says why not; no trim is taken off for it", () => {
    const horn = exerciseWith(HORN, "W15:open");
    const offers = told(offersAt(begun(horn.exercise), at("S1", "part")));
    expect(offers).toEqual(["throw S1=pressed 0.1", "look S1 move-forbidden"]);
    const inWheel = told(offersAt(begun(horn.exercise), at("X20-1b")));
    expect(inWheel.slice(0, 2)).toEqual(["open shroud 6", "probe X20-1b move-forbidden"]);
    expect(inWheel.at(-1)).toBe("unplug X20 move-trim");
    expect(inWheel.join()).not.toContain("open wheel");
  });

  test("only instruments that are allowed are offered, and after the verdict everything is over", () => {
    const few = exerciseWith(LAMP, "W4:open", { instruments: ["meter volts"] });
    expect(told(offersAt(begun(few.exercise), at("F1.2")))).toEqual([
      "probe F1.2 0.5",
      "take out F1 0.3",
      "renew F1 0.4",
    ]);
    const over = offersAt(worked(given, "verdict W4:open"), at("F1.2"));
    expect(new Set(over.map(({ refusal }) => refusal?.code))).toEqual(new Set(["move-over"]));
  });

  test("every offer is taken at the price it names, or refused as it says, wherever the learner points", () => {
    const horn = exerciseWith(HORN, "W15:open");
    const stands = worked(horn, "open bonnet", "throw S1=pressed");
    const spots = [
      ...HORN.parts.map(({ id }) => at(id, "part")),
      ...HORN.wires.flatMap(({ id, from, to }) => [at(id, "wire"), at(from), at(to)]),
    ];
    let taken = 0;
    for (const spot of spots) {
      const texts = offersAt(stands, spot).map(({ move }) => moveText(move));
      expect(new Set(texts).size).toBe(texts.length);
    }
    for (const spot of spots)
      for (const { move, minutes, refusal } of offersAt(stands, spot)) {
        const next = moved(stands, horn.vehicle, move, null);
        expect([moveText(move), next.ok ? null : next.refusal]).toEqual([moveText(move), refusal]);
        if (next.ok) expect(next.value.route.at(-1)!.minutes).toBe(minutes);
        if (next.ok) taken++;
      }
    expect(taken).toBeGreaterThan(50);
  });
});

describe("what a learner sees", () => {
  test("an attempt goes on from what was recorded as it did when it was made", () => {
    const made = worked(given, "throw S1=on", "open panel", "probe X1-1", "unplug X1", "renew F1", "look F1");
    expect(made.route.reduce(attemptAfter, begun(given.exercise))).toEqual(made);
  });

  test("the drawing has controls as set and loads as seen, and no state of any wire", () => {
    const attempt = worked(given, "throw S1=on");
    expect(loadsNow(attempt)).toEqual([{ part: "E1", does: "still" }]);
    expect(checksSeen(attempt).get("lights")).toBe("dead");
    const drawn = asDrawn(LAMP, attempt.condition, loadsNow(attempt));
    expect([drawn.wires.size, drawn.points.size]).toEqual([0, 0]);
    expect(drawn.parts.get("S1")).toMatchObject({ state: expect.any(String), amps: 0 });
    expect([...drawn.parts.get("S1")!.closed]).not.toEqual([]);
    expect(drawn.parts.has("E1")).toBe(false);
    const lit = asDrawn(LAMP, attempt.condition, [{ part: "E1", does: "on" }]);
    expect(lit.parts.get("E1")!.doing).toBe("on");
  });

  test("each move has words of its own", () => {
    const moves = [
      ...offersAt(worked(given, "open panel"), at("E1.1")),
      ...offersAt(begun(given.exercise), at("F1", "part")),
      ...offersAt(begun(exerciseWith(HORN, "W15:open").exercise), at("K1", "part")),
    ].map(({ move }) => move);
    const words = moves.map((move) => moveWords(LAMP, move));
    expect(new Set(words).size).toBe(words.length);
    expect(words).toContain("Volts at X1-1");
    expect(moveWords(LAMP, { do: "verdict", suspect: "W4:open", proof: [] })).toBe("Verdict: W4 broken");
    expect(
      INSTRUMENTS.map((instrument) =>
        moveWords(LAMP, { do: "probe", red: "F1.2", black: "battery -", instrument, lampTo: null }),
      ),
    ).not.toContain("");
  });
});
