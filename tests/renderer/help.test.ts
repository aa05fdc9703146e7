import { describe, expect, test } from "vitest";
import { WIRE_STATES } from "../../core/base/states.ts";
import { HELP, HELP_ORDER, type HelpTopic, STATE_HELP } from "../../core/base/words/help/index.ts";
import type { HelpBlock, HelpPage } from "../../core/base/words/help/page.ts";
import { isKeyId } from "../../core/edit/keys/rows.ts";
import { KINDS } from "../../core/parts/catalogue.ts";
import { kindsFor } from "../../renderer/draw/offers.ts";
import { bestOf, helpFor } from "../../renderer/help/search.ts";
import { topicOf } from "../../renderer/help/topic.ts";
import { PANELS } from "../../renderer/state/state.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import { VENTS } from "../edit/given.ts";

const TOPICS = Object.keys(HELP) as HelpTopic[];
const pageOf = (topic: HelpTopic): HelpPage => HELP[topic];
const said = (block: HelpBlock): readonly string[] =>
  typeof block === "string" ? [block] : "terms" in block ? block.terms.flat() : block;

describe("the help", () => {
  test("has a page for every view, and every page in its list once", () => {
    expect(TOPICS).toEqual(expect.arrayContaining([...PANELS]));
    expect(HELP_ORDER.flatMap(({ topics }) => topics).toSorted()).toEqual(TOPICS.toSorted());
  });

  test.each(TOPICS)("%s is plain, short, and names only keys that there are", (topic) => {
    const { title, blocks } = pageOf(topic);
    const texts = blocks.flatMap(said);
    expect(title).toMatch(/^[A-Z][^.!?]*$/);
    expect(texts.length).toBeGreaterThan(0);
    for (const text of texts) {
      expect(text.length).toBeLessThanOrEqual(260);
      expect(text).not.toMatch(/!|\b(simply|just|easy|easily|please|powerful|seamless)\b/i);
      for (const [, key] of text.matchAll(/\{([^}]*)\}/g)) expect([text, isKeyId(key!)]).toEqual([text, true]);
    }
  });

  test("says before you probe what the work can do to people, and whose word comes first", () => {
    const text = HELP.before.blocks.flatMap(said).join(" ");
    for (const words of [
      "procedure, local codes and licensed practice come first",
      "Airbags",
      "60 V DC",
      "eye protection",
      "like for like",
      "Back-probe",
      "engine start disabled",
      "load lamp gets hot",
    ])
      expect(text).toContain(words);
  });

  test("explains every wire state, and draws every kind of part that is drawn", () => {
    expect(Object.keys(STATE_HELP).toSorted()).toEqual([...WIRE_STATES].toSorted());
    const shown = kindsFor("").flatMap(({ kinds }) => kinds.map(({ name }) => name));
    const clippedOn = ["jumper", "meter-leads", "stand-in-load"];
    expect([...shown, ...clippedOn].toSorted()).toEqual(KINDS.map(({ name }) => name).toSorted());
  });
});

describe("searching it", () => {
  test.each<[string, HelpTopic]>([
    ["airbag", "before"],
    ["ghost volts", "glossary"],
    ["projector", "class"],
    ["passphrase", "cupboard"],
    ["licence", "about"],
    ["Suspects", "suspects"],
    ["*.handin.json", "files"],
    ["crash", "trouble"],
  ])("%s finds %s", (typed, topic) => {
    expect(bestOf(helpFor(typed), typed)).toBe(topic);
  });

  test("nothing finds everything, and nonsense nothing", () => {
    expect(helpFor("  ")).toEqual(HELP_ORDER);
    expect([helpFor("teapot"), bestOf([], "teapot")]).toEqual([[], null]);
  });
});

describe("what F1 opens", () => {
  test("is the page of what is in front, and leaves the work as it was", () => {
    const store = createAppStore();
    expect(topicOf(store.getState())).toBe("start");
    store.dispatch({ do: "sample-opened", circuit: VENTS });
    for (const panel of PANELS) {
      store.dispatch({ do: "open-panel", panel });
      expect(topicOf(store.getState())).toBe(panel);
    }
    const before = store.getState();
    store.dispatch({ do: "open-help" });
    expect(store.getState().help).toBe(PANELS.at(-1));
    store.dispatch({ do: "close-help" });
    expect(store.getState()).toEqual(before);
    store.dispatch({ do: "use-tool", tool: { is: "wire" } });
    expect(topicOf(store.getState())).toBe("draw");
    store.dispatch({ do: "open-print" });
    expect(topicOf(store.getState())).toBe("print");
    store.dispatch({ do: "close-print" });
    store.dispatch({ do: "handins", act: { act: "show" } });
    expect(topicOf(store.getState())).toBe("handins");
  });
});
