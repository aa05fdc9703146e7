import { expect, test, vi } from "vitest";
import { REPORT_WORDS } from "../../core/base/words/report.ts";
import { mishapsOf, withoutWords } from "../../renderer/report/mishaps.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import { VENTS } from "../edit/given.ts";
import { type Watched, watched } from "./stage.ts";

/** A page with a circuit on its bench, that takes faults down. */
function noted(seen: Watched = watched()) {
  const mishaps = mishapsOf(
    seen.host,
    () => store,
    () => new Date("2026-01-01T00:00:00Z"),
  );
  const store = createAppStore("light", [mishaps.reaction]);
  store.dispatch({ do: "sample-opened", circuit: VENTS });
  return { store, mishaps, seen, report: () => store.getState().report };
}

test("a fault is told of with its report, which can be shown, and says what was done before", async () => {
  const { store, mishaps, seen, report } = noted();
  store.dispatch({ do: "open-panel", panel: "works" });
  store.dispatch({ do: "hover", thing: null });
  mishaps.note(new TypeError("x is undefined"), "page");
  await vi.waitFor(() => expect(report()).not.toBeNull());
  const [sent] = seen.sent("reports.keep");
  expect(sent).toMatchObject({
    where: "page",
    said: "TypeError: x is undefined",
    did: ["open-panel works", "sample-opened"],
    counts: { parts: VENTS.parts.length, wires: VENTS.wires.length },
  });
  expect(sent?.at).toMatch(/mishaps\.test\.ts/);
  const [notice] = store.getState().notices;
  expect(notice).toMatchObject({ title: REPORT_WORDS.title, isError: true });
  store.dispatch(notice!.offers![0]!.action);
  expect(store.getState().isShowingReport).toBe(true);
  store.dispatch({ do: "close-report" });
  expect(store.getState().isShowingReport).toBe(false);
});

test("the same fault with every frame is one, and many are only so many", async () => {
  const { mishaps, seen } = noted();
  const error = new Error("again and again");
  for (let frame = 0; frame < 50; frame++) mishaps.note(error, "page");
  for (let each = 0; each < 50; each++) mishaps.note(`fault ${each}`, "page");
  await vi.waitFor(() => expect(seen.sent("reports.keep").length).toBeGreaterThan(0));
  expect(seen.sent("reports.keep")).toHaveLength(8);
});

test("where the host is gone the page writes the report itself", async () => {
  const seen = watched();
  seen.fail(true);
  const { mishaps, report } = noted(seen);
  mishaps.note("thrown as text", "worker");
  await vi.waitFor(() =>
    expect(report()).toMatchObject({ file: null, text: expect.stringContaining("thrown as text") }),
  );
});

test("nothing that stands on the bench is in a report, and of an exercise not even the sentence", () => {
  const { store } = noted();
  const { open, handins, learning } = store.getState();
  const part = VENTS.parts.find(({ label }) => label)!;
  const said = `Error: broken invariant: "${part.label}" of ${VENTS.title} (${VENTS.wires[9]!.id}) has no place`;
  const text = withoutWords(said, { open, handins, learning });
  for (const word of [part.label!, VENTS.title, VENTS.wires[9]!.id]) expect(text).not.toContain(word);
  expect(text).toContain("broken invariant");
  const learner = { open: null, handins, learning: {} as never };
  expect(withoutWords("Error: W18 is open", learner)).toBe("Error");
});
