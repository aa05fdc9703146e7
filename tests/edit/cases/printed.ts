import { benchFor } from "../../../core/edit/bench.ts";
import { PHOTO, printedOn, SHEET } from "../../circuit/printed.ts";
import { SMALL } from "../given.ts";
import type { SomeCases } from "./cases.ts";

const bare = benchFor(SMALL);
const small = benchFor(printedOn(SMALL));
const locked = benchFor(printedOn(SMALL, { isLocked: true }));
const crowded = benchFor(printedOn(SMALL, {}, 39));
const a4 = [
  [0, 0],
  [297, 0],
  [297, 210],
  [0, 210],
];
const paper = [
  [210, 160],
  [1_900, 240],
  [2_000, 1_450],
  [100, 1_380],
];
const folded = [
  [0, 0],
  [297, 210],
  [297, 0],
  [0, 210],
];

/** Commands for printed pages under the drawing; `u1` is a sheet laid straight, `u2` a photograph, both under page p1. */
export const PRINTED_CASES = {
  "add-underlay": {
    good: [
      [bare, "p1", { title: " Vents.pdf, page 3 ", image: SHEET.image }],
      [small, "p2", { title: "A photograph", image: PHOTO.image, corners: a4 }],
    ],
    bad: [
      ["page-unknown", bare, "p9", { title: "a", image: SHEET.image }],
      ["label-empty", bare, "p1", { title: " ", image: SHEET.image }],
      ["underlays-many", crowded, "p1", { title: "a", image: SHEET.image }],
      ["picture-described", bare, "p1", { title: "a", image: { ...SHEET.image, sha256: "../x" } }],
      ["picture-described", bare, "p1", { title: "a", image: { ...SHEET.image, widthPx: 0 } }],
      ["picture-pixels", bare, "p1", { title: "a", image: { ...SHEET.image, widthPx: 9_000, heightPx: 9_000 } }],
      ["corners-fold", bare, "p1", { title: "a", image: SHEET.image, corners: folded }],
    ],
  },
  "move-underlay": {
    good: [
      [small, "u1", 10, -4.25],
      [small, "u2", -100, 0],
    ],
    bad: [
      ["underlay-unknown", small, "u9", 1, 1],
      ["underlay-locked", locked, "u1", 1, 1],
      ["underlay-off-page", small, "u1", 400, 0],
      ["corners-far", small, "u1", 1e6, 0],
      ["corners-fold", small, "u1", Number.NaN, 0],
      ["already-so", small, "u1", 0, 0.001],
    ],
  },
  "turn-underlay": {
    good: [
      [small, "u1", "clockwise"],
      [small, "u2", "back"],
    ],
    bad: [
      ["underlay-unknown", small, "u9", "back"],
      ["underlay-locked", locked, "u1", "back"],
    ],
  },
  "scale-underlay": {
    good: [
      [small, "u1", 2],
      [small, "u2", 0.1],
    ],
    bad: [
      ["underlay-unknown", small, "u9", 2],
      ["underlay-locked", locked, "u1", 2],
      ["scale-limits", small, "u1", 0],
      ["scale-limits", small, "u1", Number.NaN],
      ["already-so", small, "u1", 1],
    ],
  },
  "place-underlay": {
    good: [
      [small, "u2", a4, paper],
      [small, "u1", a4, a4],
    ],
    bad: [
      ["already-so", small, "u1", a4],
      ["underlay-unknown", small, "u9", a4],
      ["underlay-locked", locked, "u1", a4],
      ["corners-fold", small, "u2", folded],
      ["corners-fold", small, "u2", a4.toReversed()],
      ["corners-fold", small, "u2", a4, folded],
      ["spot-off-picture", small, "u2", a4, [[-9, 0], ...paper.slice(1)]],
    ],
  },
  "crop-underlay": {
    good: [
      [small, "u1", { left: 0.1, top: 0, right: 0.9, bottom: 1 }],
      [benchFor(printedOn(SMALL, { cut: a4 as never })), "u1", null],
    ],
    bad: [
      ["underlay-unknown", small, "u9", null],
      ["underlay-locked", locked, "u1", null],
      ["corners-fold", small, "u1", { left: 0.9, top: 0, right: 0.1, bottom: 1 }],
      ["corners-fold", small, "u1", { left: Number.NaN, top: 0, right: 1, bottom: 1 }],
      ["spot-off-picture", small, "u1", { left: -0.1, top: 0, right: 1, bottom: 1 }],
      ["already-so", small, "u1", null],
    ],
  },
  "show-underlay": {
    good: [
      [small, "u1", { opacity: 0.25 }],
      [small, "u1", { contrast: 2 }],
      [small, "u2", { whiteOut: true }],
      [small, "u2", { isHidden: true }],
    ],
    bad: [
      ["underlay-unknown", small, "u9", { opacity: 1 }],
      ["look-limits", small, "u1", { opacity: 1.5 }],
      ["look-limits", small, "u1", { contrast: Number.NaN }],
      ["already-so", small, "u1", { isHidden: false }],
    ],
  },
  "lock-underlay": {
    good: [
      [small, "u1", true],
      [locked, "u1", false],
    ],
    bad: [
      ["underlay-unknown", small, "u9", true],
      ["already-so", small, "u1", false],
    ],
  },
  "retitle-underlay": {
    good: [[small, "u1", " Roof vents, left half "]],
    bad: [
      ["underlay-unknown", small, "u9", "a"],
      ["label-empty", small, "u1", " "],
      ["already-so", small, "u1", SHEET.title],
    ],
  },
  "remove-underlay": {
    good: [
      [small, "u1"],
      [small, "u2"],
    ],
    bad: [["underlay-unknown", small, "u9"]],
  },
  "reorder-underlay": {
    good: [
      [small, "u1", 1],
      [small, "u2", 0],
    ],
    bad: [
      ["underlay-unknown", small, "u9", 0],
      ["edit-place", small, "u1", 2],
      ["edit-place", small, "u1", 0.5],
      ["already-so", small, "u1", 0],
    ],
  },
  "tie-to-print": {
    good: [
      [small, "M1", { underlay: "u2", x: 400.4, y: 20 }],
      [small, "W2", { underlay: "u1", x: 0, y: 0 }],
    ],
    bad: [
      ["thing-unknown", small, "M99", { underlay: "u1", x: 0, y: 0 }],
      ["underlay-unknown", small, "M1", { underlay: "u9", x: 0, y: 0 }],
      ["spot-off-picture", small, "M1", { underlay: "u1", x: -1, y: 0 }],
      ["already-so", small, "S1", { underlay: "u1", x: 300, y: 200 }],
    ],
  },
  "untie-from-print": {
    good: [[small, "S1"]],
    bad: [
      ["thing-unknown", small, "M99"],
      ["not-tied", small, "M1"],
    ],
  },
} as const satisfies SomeCases;
