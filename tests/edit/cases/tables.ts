import { plantFault } from "../../../core/edit/commands/plantFault.ts";
import { throwControl } from "../../../core/edit/commands/throwControl.ts";
import { afterAll, VENTS } from "../given.ts";
import { busy, vents } from "./benches.ts";
import type { SomeCases } from "./cases.ts";

const off = { name: "off", joins: [] };
const on = { name: "on", joins: [["30", "15"]] };
const START = [off, on, { name: "start", joins: [["30", "15"]], springsBackTo: "on" }];
const PINS = { "30": "supply", "31": "ground", rain: "input", lock: "input", close: "drives-high" };
const thrown = afterAll(
  VENTS,
  (bench) => throwControl(bench, "S1", "on"),
  (bench) => throwControl(bench, "S2.middle", "open"),
  (bench) => plantFault(bench, "S1:left-in-on"),
  (bench) => plantFault(bench, "S5:stuck-open-4-6"),
);

/** Commands that change what terminals and positions of a part do. */
export const TABLE_CASES = {
  "change-positions": {
    good: [
      [thrown, "S1", "", START],
      [thrown, "S1", "", [off, { ...on, name: "run" }]],
      [thrown, "S1", "", [off]],
      [thrown, "S1", "", [on, off]],
      [thrown, "S2", "middle", [{ name: "home", joins: [["C1", "31"]] }]],
      [thrown, "S2", "spare", [off, { name: "on", joins: [["30", "P"]] }]],
    ],
    bad: [
      ["part-unknown", vents, "S99", "", [off]],
      ["part-positions-idle", vents, "M1", "", [off]],
      ["control-unknown", vents, "S1", "spare", [off]],
      ["control-unknown", vents, "S2", "", [off]],
      ["control-spelling", vents, "S2", "9 x", [off]],
      ["positions-count", vents, "S1", "", []],
      ["position-spelling", vents, "S1", "", [{ name: "a=b", joins: [] }]],
      ["twice", vents, "S1", "", [off, off]],
      ["point-terminal", vents, "S1", "", [off, { name: "on", joins: [["30", "50"]] }]],
      ["join-itself", vents, "S1", "", [off, { name: "on", joins: [["30", "30"]] }]],
      ["rest-springs-back", vents, "S1", "", [{ ...off, springsBackTo: "on" }, on]],
      ["position-unknown", vents, "S1", "", [off, { ...on, springsBackTo: "up" }]],
      ["position-unknown", vents, "S1", "", [off, { ...on, springsBackTo: "on" }]],
      [
        "springs-onto-spring",
        vents,
        "S1",
        "",
        [off, { ...on, springsBackTo: "off" }, { name: "start", joins: [], springsBackTo: "on" }],
      ],
      ["already-so", vents, "S1", "", [off, on]],
    ],
  },
  "write-table": {
    good: [
      [thrown, "S1", "off; run 30-15"],
      [thrown, "S2", "Lock-out: off P-P0; on P-P1\nMiddle: rest C1-31; open held C1-30"],
      [thrown, "S5", "rest 4-1 5-2; open held 4-6 5-2; close held 4-1 5-6; away held 4-9"],
      [thrown, "S1", "Key: off; on 30-15\nLight: off; on 30-58"],
    ],
    bad: [
      ["part-unknown", vents, "S99", "off; on 1-2"],
      ["part-positions-idle", vents, "M1", "off; on 1-2"],
      ["table-none", vents, "S1", " "],
      ["table-name", vents, "S1", "Key:"],
      ["table-join", vents, "S1", "off; on 30-15 and"],
      ["table-label", vents, "S1", "off; on 30-15\noff; on 30-50"],
      ["control-spelling", vents, "S1", "9 x: off; on 30-15"],
      ["join-itself", vents, "S1", "off; on 30-30"],
      ["twice", vents, "S1", "off; off 30-15"],
      ["cavity-spelling", vents, "S1", "off; on 30-a.b"],
      ["already-so", vents, "S1", "off; on 30-15"],
    ],
  },
  "rename-control": {
    good: [
      [thrown, "S2", "middle", "centre", "Centre"],
      [thrown, "S2", "middle", "middle", ""],
      [thrown, "S1", "", "key"],
    ],
    bad: [
      ["part-unknown", vents, "S99", "middle", "centre"],
      ["control-unknown", vents, "S2", "spare", "centre"],
      ["control-unknown", vents, "M1", "", "centre"],
      ["control-spelling", vents, "S2", "middle", "a.b"],
      ["twice", vents, "S2", "middle", "rear"],
      ["label-long", vents, "S2", "middle", "middle", "x".repeat(161)],
      ["already-so", vents, "S2", "middle", "middle", "Middle"],
    ],
  },
  "remove-control": {
    good: [
      [thrown, "S2", "middle"],
      [vents, "S2", "lock-out"],
    ],
    bad: [
      ["part-unknown", vents, "S99", "middle"],
      ["control-unknown", vents, "S2", "spare"],
      ["control-unknown", vents, "S1", ""],
      [
        "control-last",
        {
          ...vents,
          circuit: {
            ...VENTS,
            checks: [],
            scenes: [],
            parts: VENTS.parts.map((part) =>
              part.id === "S2" ? { ...part, controls: part.controls!.slice(0, 1) } : part,
            ),
          },
        },
        "S2",
        "lock-out",
      ],
    ],
  },
  "change-terminals": {
    good: [
      [thrown, "S5", ["1", "2", "4", "5", "30"]],
      [thrown, "S5", ["1", "2", "4", "5"]],
      [vents, "M3", ["A", "B"]],
      [vents, "U1", ["30", "31", "rain", "lock", "close", "spare"]],
    ],
    bad: [
      ["part-unknown", vents, "S99", ["1"]],
      ["terminals-in-line", vents, "X30", ["1"]],
      ["terminals-count", vents, "S5", []],
      ["cavity-spelling", vents, "S5", ["1.2"]],
      ["twice", vents, "S5", ["1", "1"]],
      ["part-terminals", vents, "M3", ["1", "2", "3"]],
      ["already-so", vents, "S5", ["1", "2", "4", "5", "6"]],
    ],
  },
  "change-pins": {
    good: [
      [vents, "U1", { ...PINS, lock: "unknown" }],
      [{ ...vents, condition: { drive: { "U1.close": "on" } } }, "U1", { "30": "supply", "31": "ground" }],
    ],
    bad: [
      ["part-unknown", vents, "U99", PINS],
      ["part-pins-idle", vents, "S5", PINS],
      ["pin-role", vents, "U1", { "30": "feed" }],
      ["point-terminal", vents, "U1", { ...PINS, spare: "input" }],
      ["terminals-count", vents, "U1", {}],
      ["already-so", vents, "U1", PINS],
    ],
  },
  "change-table": {
    good: [
      [busy, "U1", [{ when: { rain: "high" }, joins: [["30", "close"]] }]],
      [vents, "U1", []],
    ],
    bad: [
      ["part-unknown", vents, "U99", []],
      ["part-pins-idle", vents, "S5", []],
      ["point-terminal", vents, "U1", [{ when: { snow: "high" }, joins: [] }]],
      ["point-terminal", vents, "U1", [{ when: {}, joins: [["30", "open"]] }]],
      ["join-itself", vents, "U1", [{ when: {}, joins: [["30", "30"]] }]],
      ["pin-level", vents, "U1", [{ when: { rain: "wet" }, joins: [] }]],
      ["table-many", vents, "U1", Array.from({ length: 401 }, () => ({ when: {}, joins: [] }))],
      ["already-so", vents, "U1", [{ when: { rain: "high", lock: "low" }, joins: [["30", "close"]] }]],
    ],
  },
} as const satisfies SomeCases;
