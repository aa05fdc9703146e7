import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { startDrafting } from "../../renderer/arrange/drafting.ts";

/** A worker that does what the test says. */
class Double extends EventTarget {
  onmessage: ((event: { readonly data: unknown }) => void) | null = null;
  postMessage = vi.fn();
  terminate = vi.fn();
  constructor() {
    super();
    made.push(this);
  }
  dies(message: string): void {
    this.dispatchEvent(Object.assign(new Event("error"), { message, filename: "worker.js", lineno: 1, colno: 2 }));
  }
}

let made: Double[] = [];
beforeEach(() => {
  made = [];
  vi.stubGlobal("Worker", Double);
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const GRAPH = { id: "page" } as never;

test("a worker that dies while a page is laid out is noted, and what it was asked for fails", async () => {
  const note = vi.fn();
  const drafting = startDrafting({ note });
  const [library, straightener] = made;
  const laid = drafting.layOut(GRAPH);
  library!.dies("out of memory");
  await expect(laid).rejects.toThrow("out of memory");
  expect(note).toHaveBeenCalledExactlyOnceWith(expect.objectContaining({ message: "out of memory" }), "worker");
  await expect(drafting.attempt({} as never, {} as never, null)).rejects.toThrow("out of memory");
  drafting.end();
  expect(straightener!.terminate).toHaveBeenCalled();
});

test("what goes wrong while a layout is straightened is noted with its place", async () => {
  const note = vi.fn();
  const drafting = startDrafting({ note });
  const [, straightener] = made;
  const attempt = drafting.attempt({} as never, {} as never, null);
  straightener!.onmessage?.({ data: { attempt: null, trouble: "no room", at: "at straightened" } });
  await expect(attempt).rejects.toThrow("no room");
  expect(note).toHaveBeenCalledExactlyOnceWith(
    expect.objectContaining({ message: "no room", stack: "at straightened" }),
    "worker",
  );
});
