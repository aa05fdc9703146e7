import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { MadePapers } from "../../renderer/printed/madePapers.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A picture that tells whether it was let go. */
function picture() {
  const close = vi.fn();
  return {
    levels: [{ close } as unknown as ImageBitmap],
    isGone: () => vi.runAllTimers() && close.mock.calls.length > 0,
  };
}

test("what was asked for is asked for once, and an answer that comes too late is let go", () => {
  const papers = new MadePapers();
  expect(papers.asks("u1", "a")).toBe(true);
  expect(papers.asks("u1", "a")).toBe(false);
  expect(papers.asks("u1", "b")).toBe(true);
  const [late, right] = [picture(), picture()];
  expect(papers.put("u1", "a", late.levels)).toBe(false);
  expect(papers.put("u1", "b", right.levels)).toBe(true);
  expect(late.isGone()).toBe(true);
  expect(right.isGone()).toBe(false);
  expect(papers.of("u1")).toBe(right.levels);
});

test("a picture that is replaced is let go, but not in the frame that is under way", () => {
  const papers = new MadePapers();
  const [first, second] = [picture(), picture()];
  papers.asks("u1", "a");
  papers.put("u1", "a", first.levels);
  papers.asks("u1", "b");
  papers.put("u1", "b", second.levels);
  expect(first.levels[0]!.close).not.toHaveBeenCalled();
  expect(first.isGone()).toBe(true);
});

test("of pages out of sight the last few are kept, the others are made anew", () => {
  const papers = new MadePapers();
  const made = ["u1", "u2", "u3", "u4", "u5", "u6"].map((id) => {
    const one = picture();
    papers.asks(id, "a");
    papers.put(id, "a", one.levels);
    return one;
  });
  papers.keepOf(["u1"]);
  expect(made.map(({ isGone }) => isGone())).toEqual([false, true, true, false, false, false]);
  expect(papers.asks("u2", "a")).toBe(true);
  expect(papers.asks("u1", "a")).toBe(false);
});
