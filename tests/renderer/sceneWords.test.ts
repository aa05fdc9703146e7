import { expect, test } from "vitest";
import { typedScene, wordsOf } from "../../renderer/circuit/sceneWords.ts";

test("a scene comes out of its form as it went in", () => {
  const scene = { label: "Opens", caption: "Watch M3.", notes: "Ask first.", focus: ["S5", "M3"], seconds: 12 };
  expect(typedScene(wordsOf(scene))).toEqual(scene);
  expect(typedScene(wordsOf({ label: "Opens" }))).toEqual({
    label: "Opens",
    caption: "",
    notes: "",
    focus: [],
    seconds: null,
  });
});

test("parts are typed with commas or spaces, seconds with either sign of decimals", () => {
  const typed = { label: "", caption: "", notes: "", focus: " S5,M3  SP1; ", seconds: "2,5" };
  expect(typedScene(typed)).toMatchObject({ focus: ["S5", "M3", "SP1"], seconds: 2.5 });
  expect(typedScene({ ...typed, seconds: "soon" }).seconds).toBeNaN();
});
