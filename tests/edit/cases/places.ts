import { type Asked, MOST_QUESTIONS } from "../../../core/circuit/circuit.ts";
import { benchFor } from "../../../core/edit/bench.ts";
import { SMALL, VENTS } from "../given.ts";
import { CHECK, noted, vents } from "./benches.ts";
import type { SomeCases } from "./cases.ts";

const small = benchFor(SMALL);
const PHOTO = { sha256: "ab".repeat(32), mime: "image/webp", widthPx: 1_600, heightPx: 1_200 } as const;
const photographed = benchFor({
  ...SMALL,
  access: SMALL.access.map((group) => (group.id === "dash" ? { ...group, photo: PHOTO } : group)),
});
/** The first scene asks this. */
const asks = (questions: readonly Asked[]) =>
  benchFor({ ...VENTS, scenes: VENTS.scenes.map((scene, at) => (at === 0 ? { ...scene, questions } : scene)) });
const asking = asks([{ asks: "state", point: "X5-6" }]);
const askingMuch = asks(Array.from({ length: MOST_QUESTIONS }, () => ({ asks: "state", point: "X5-6" }) as const));
const LONG = "x".repeat(161);
const driven = { set: { S1: "on", S5: "open" } };

/** Commands that say how places are reached, and those of pages. */
export const PLACE_CASES = {
  "add-access": {
    good: [
      [small, { label: " Seat  out ", minutes: 6, hands: 2, after: ["dash"], cautions: ["Belt tensioner.", " "] }],
      [small, { label: "+", minutes: 0 }],
    ],
    bad: [
      ["label-empty", small, { label: " ", minutes: 1 }],
      ["label-long", small, { label: LONG, minutes: 1 }],
      ["label-taken", small, { label: "Column shroud off", minutes: 1 }],
      ["minutes-limits", small, { label: "Seat out", minutes: -1 }],
      ["hands-count", small, { label: "Seat out", minutes: 1, hands: 3 }],
      ["access-unknown", small, { label: "Seat out", minutes: 1, after: ["roof"] }],
      ["cautions-many", small, { label: "Seat out", minutes: 1, cautions: Array.from({ length: 41 }, () => "No.") }],
    ],
  },
  "change-access": {
    good: [
      [small, "dash", { label: "Dash out", minutes: 9 }],
      [small, "column", { after: [] }],
    ],
    bad: [
      ["access-unknown", small, "roof", { minutes: 1 }],
      ["access-loop", small, "dash", { after: ["column"] }],
      ["access-loop", small, "dash", { after: ["dash"] }],
      ["minutes-limits", small, "dash", { minutes: Number.NaN }],
      ["already-so", small, "dash", { minutes: 4 }],
    ],
  },
  "photo-access": {
    good: [
      [small, "dash", PHOTO],
      [photographed, "dash", null],
      [photographed, "dash", { ...PHOTO, sha256: "cd".repeat(32) }],
    ],
    bad: [
      ["access-unknown", small, "roof", PHOTO],
      ["photo-side", small, "dash", { ...PHOTO, heightPx: 1_601 }],
      ["already-so", small, "dash", null],
      ["already-so", photographed, "dash", PHOTO],
    ],
  },
  "remove-access": {
    good: [
      [small, "dash"],
      [small, "column"],
    ],
    bad: [["access-unknown", small, "roof"]],
  },
  "set-reach": {
    good: [
      [small, "M1.2", { access: "dash", minutes: 2, hands: 2, doNotProbe: "sealed", cautions: ["Hot."] }],
      [small, "S1", null],
      [small, "X1", { where: " Behind the  dash ", access: "dash" }],
      [small, "X1-1", { minutes: 1 }],
    ],
    bad: [
      ["reach-unknown", small, "M9", { minutes: 1 }],
      ["access-unknown", small, "M1", { access: "roof" }],
      ["minutes-limits", small, "M1", { minutes: 10_001 }],
      ["label-long", small, "M1", { doNotProbe: LONG }],
      ["label-long", small, "M1", { where: LONG }],
      ["already-so", small, "X1-1", { hands: 2, minutes: 1 }],
      ["already-so", small, "M1.2", null],
    ],
  },
  "add-page": {
    good: [
      [small, { title: " Doors " }],
      [vents, { title: "Doors", widthMm: 420, heightMm: 297 }],
    ],
    bad: [
      ["label-empty", small, { title: "" }],
      ["page-size", small, { title: "Doors", widthMm: 10 }],
    ],
  },
  "retitle-page": {
    good: [[small, "p2", "Earths"]],
    bad: [
      ["page-unknown", small, "p9", "Earths"],
      ["label-empty", small, "p2", " "],
      ["already-so", small, "p2", "Grounds"],
    ],
  },
  "remove-page": {
    good: [
      [small, "p2", "p1"],
      [{ ...small, circuit: { ...SMALL, pages: [...SMALL.pages, { ...SMALL.pages[0]!, id: "p3" }] } }, "p3"],
    ],
    bad: [
      ["page-unknown", small, "p9"],
      ["page-unknown", small, "p2", "p9"],
      ["page-in-use", small, "p2"],
      ["page-in-use", small, "p2", "p2"],
      ["off-the-page", vents, "p2", "p1"],
    ],
  },
  "merge-pages": {
    good: [
      [small, "p2", "p1"],
      [vents, "p1", "p2"],
      [vents, "p4", "p2"],
    ],
    bad: [
      ["page-unknown", small, "p9", "p1"],
      ["page-unknown", small, "p1", "p9"],
      ["page-itself", small, "p1", "p1"],
      [
        "page-size",
        {
          ...small,
          circuit: { ...SMALL, pages: SMALL.pages.map((page) => ({ ...page, widthMm: 6_000, heightMm: 6_000 })) },
        },
        "p2",
        "p1",
      ],
    ],
  },
  "reorder-page": {
    good: [
      [vents, "p1", 2],
      [vents, "p4", 0],
    ],
    bad: [
      ["page-unknown", vents, "p9", 0],
      ["edit-place", vents, "p1", 4],
      ["edit-place", vents, "p1", 0.5],
      ["already-so", vents, "p1", 0],
    ],
  },
  "resize-page": {
    good: [[vents, "p1", 420, 297]],
    bad: [
      ["page-unknown", vents, "p9", 420, 297],
      ["page-size", vents, "p1", 420, Number.NaN],
      ["off-the-page", vents, "p1", 60, 297],
      [
        "bend-off-page",
        { ...small, circuit: { ...SMALL, placement: { ...SMALL.placement, wires: { W2: [[110, 9]] } } } },
        "p1",
        250,
        210,
      ],
      ["already-so", vents, "p1", 297, 210],
    ],
  },
  "link-pages": {
    good: [
      [vents, ["L1", "L2"], "Feeds"],
      [small, ["L1", "L2", "L1"], " 31  a "],
    ],
    bad: [
      ["links-none", vents, [], "Feeds"],
      ["part-unknown", vents, ["L99"], "Feeds"],
      ["link-kind", vents, ["L1", "M1"], "Feeds"],
      ["label-empty", vents, ["L1"], " "],
      ["already-so", vents, ["L1", "L3"], "Vent feed"],
    ],
  },
} as const satisfies SomeCases;

/** Commands of the circuit's head, its function checks and its scenes. */
export const HEAD_CASES = {
  "change-title": {
    good: [[vents, "Roof  vents, later"]],
    bad: [
      ["label-empty", vents, ""],
      ["label-long", vents, LONG],
      ["already-so", vents, VENTS.title],
    ],
  },
  "change-vehicle": {
    good: [
      [vents, "Another camper"],
      [small, ""],
    ],
    bad: [
      ["label-long", vents, LONG],
      ["already-so", small, "Test van (invented)"],
    ],
  },
  "change-volts": {
    good: [[vents, "24 V"]],
    bad: [
      ["over-60-volts", vents, "400"],
      ["volts-least", vents, "0.5"],
      ["amount-unit", vents, "24 A"],
      ["already-so", vents, "12"],
    ],
  },
  "change-colour-codes": {
    good: [
      [vents, "german"],
      [vents, "free"],
    ],
    bad: [
      ["colour-set", vents, "martian"],
      ["already-so", vents, "iec60757"],
    ],
  },
  "change-revision": {
    good: [
      [vents, "7"],
      [{ ...vents, circuit: { ...VENTS, revision: 3 } }, " "],
    ],
    bad: [
      ["revision-number", vents, "1.5"],
      ["revision-number", vents, "-1"],
      ["revision-number", vents, "b"],
      ["already-so", { ...vents, circuit: { ...VENTS, revision: 3 } }, "3"],
    ],
  },
  "change-cautions": {
    good: [
      [vents, ["Hands clear of the roof.", "Fuse out before the plug."]],
      [small, []],
    ],
    bad: [
      ["label-long", vents, [LONG]],
      ["cautions-many", vents, Array.from({ length: 41 }, () => "No.")],
      ["already-so", small, [" Hands clear of the wiper. "]],
    ],
  },
  "add-check": {
    good: [
      [vents, { label: "Middle vent, once more", condition: driven, load: "M3", expect: "forward" }],
      [vents, { label: "!", condition: {}, load: "M3", expect: "off" }],
    ],
    bad: [
      ["label-empty", vents, { label: "", condition: driven, load: "M3", expect: "forward" }],
      ["label-taken", vents, { ...VENTS.checks[0]! }],
      ["condition-control", vents, { label: "a", condition: { set: { S99: "on" } }, load: "M3", expect: "on" }],
      ["part-unknown", vents, { label: "a", condition: {}, load: "M99", expect: "on" }],
      ["check-without-work", vents, { label: "a", condition: {}, load: "SP1", expect: "on" }],
      ["check-expects", vents, { label: "a", condition: {}, load: "M3", expect: "sings" }],
    ],
  },
  "change-check": {
    good: [
      [noted, CHECK, { label: "Called otherwise" }],
      [vents, CHECK, { condition: driven, load: "M3" }],
    ],
    bad: [
      ["no-check", vents, "no-such", { label: "a" }],
      ["label-taken", vents, CHECK, { label: VENTS.checks[1]!.label }],
      ["check-expects", vents, CHECK, { expect: "sings" }],
      ["already-so", vents, CHECK, { load: VENTS.checks[0]!.load }],
    ],
  },
  "remove-check": {
    good: [
      [noted, CHECK],
      [vents, CHECK],
    ],
    bad: [["no-check", vents, "no-such"]],
  },
  "add-scene": {
    good: [
      [
        { ...vents, condition: driven },
        { label: "Middle held open", caption: " Watch M3. " },
      ],
      [vents, { label: "First", condition: driven }, 0],
      [vents, { label: "One motor", focus: ["M3", "S5"], seconds: 12 }],
    ],
    bad: [
      ["label-empty", vents, { label: " " }],
      ["label-taken", vents, { label: VENTS.scenes[0]!.label }],
      ["caption-long", vents, { label: "a", caption: "x".repeat(1001) }],
      ["notes-long", vents, { label: "a", notes: "x".repeat(1001) }],
      ["condition-control", vents, { label: "a", condition: { set: { S99: "on" } } }],
      ["part-unknown", vents, { label: "a", focus: ["M3", "M99"] }],
      ["scene-seconds", vents, { label: "a", seconds: 0 }],
      ["scene-seconds", vents, { label: "a", seconds: Number.NaN }],
      ["edit-place", vents, { label: "a" }, 99],
    ],
  },
  "change-scene": {
    good: [
      [vents, 0, { label: "Called otherwise" }],
      [vents, 1, { condition: driven, caption: "" }],
      [vents, 1, { focus: ["M3"], seconds: 8 }],
    ],
    bad: [
      ["no-scene", vents, 99, { label: "a" }],
      ["label-taken", vents, 0, { label: VENTS.scenes[1]!.label }],
      ["condition-position", vents, 0, { condition: { set: { S1: "up" } } }],
      ["already-so", vents, 0, { label: VENTS.scenes[0]!.label }],
    ],
  },
  "ask-in-scene": {
    good: [
      [vents, 0, { asks: "state", point: "X5-6" }],
      [vents, 0, { asks: "volts", point: "X5-6", black: "battery -" }],
    ],
    bad: [
      ["no-scene", vents, 99, { asks: "state", point: "X5-6" }],
      ["point-spelling", vents, 0, { asks: "state", point: "X99-1" }],
      ["questions-none", vents, 0, { asks: "volts", point: "X5-6", black: "X5-1" }],
      ["questions-known", asking, 0, { asks: "state", point: "X5-6" }],
      ["questions-many", askingMuch, 0, { asks: "volts", point: "X5-6", black: "battery -" }],
    ],
  },
  "remove-scene": { good: [[vents, 0]], bad: [["no-scene", vents, 99]] },
  "reorder-scene": {
    good: [
      [vents, 0, 1],
      [vents, 1, 0],
    ],
    bad: [
      ["no-scene", vents, 99, 0],
      ["edit-place", vents, 0, 99],
      ["already-so", vents, 1, 1],
    ],
  },
} as const satisfies SomeCases;
