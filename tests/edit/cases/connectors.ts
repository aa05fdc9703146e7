import { plantFault } from "../../../core/edit/commands/plantFault.ts";
import { afterAll, VENTS } from "../given.ts";
import { busy, vents } from "./benches.ts";
import type { SomeCases } from "./cases.ts";

const corroded = afterAll(VENTS, (bench) => plantFault(bench, "X5-6:corroded=20"));

/** Commands that draw connectors. */
export const CONNECTOR_CASES = {
  "add-connector": {
    good: [
      [
        vents,
        {
          id: "X99",
          rows: [
            ["1", "2"],
            ["3", ""],
          ],
          label: " Spare  plug ",
        },
      ],
      [busy, { rows: [["A"]] }],
      [
        { ...vents, circuit: { ...VENTS, connectors: VENTS.connectors.filter(({ id }) => id !== "X30") } },
        { id: "X30", rows: [["1", "2"]] },
      ],
    ],
    bad: [
      ["rows-none", vents, { rows: [["", ""]] }],
      ["rows-many", vents, { rows: Array.from({ length: 61 }, (_, row) => [`${row}`]) }],
      ["twice", vents, { rows: [["1"], ["1"]] }],
      ["cavity-spelling", vents, { rows: [["1.2"]] }],
      ["id-taken", vents, { id: "X5", rows: [["1"]] }],
      ["id-taken", vents, { id: "X30", rows: [["1"]] }],
      ["id-taken", vents, { id: "S5", rows: [["1"]] }],
      ["id-spelling", vents, { id: "X-5", rows: [["1"]] }],
      ["label-long", vents, { rows: [["1"]], label: "x".repeat(161) }],
    ],
  },
  "set-rows": {
    good: [
      [
        vents,
        "X5",
        [
          ["1", "2", "", "6"],
          ["4", "5"],
        ],
      ],
      [
        corroded,
        "X5",
        [
          ["A", "B", "C"],
          ["D", "E", "F"],
        ],
      ],
      [corroded, "X5", [["1", "2"]]],
      [vents, "X30", [["2", "1"]]],
    ],
    bad: [
      ["point-connector", vents, "X99", [["1"]]],
      ["rows-none", vents, "X5", []],
      ["point-terminal", vents, "X30", [["1", "2", "3"]]],
      [
        "already-so",
        vents,
        "X5",
        [
          ["1", "2", "3"],
          ["4", "5", "6"],
        ],
      ],
    ],
  },
  "fill-cavity": {
    good: [
      [vents, "X5", "3", "F2.2"],
      [vents, "X5", "6", null],
      [corroded, "X5", "6", "F2.2"],
    ],
    bad: [
      ["point-connector", vents, "X99", "1", null],
      ["connector-in-line", vents, "X30", "1", "F2.2"],
      ["point-cavity", vents, "X5", "9", "F2.2"],
      ["point-part", vents, "X5", "3", "F99.2"],
      ["cavity-carries", vents, "X5", "3", "X30-1a"],
      ["cavity-carries", vents, "X5", "3", "X4-1"],
      ["carried-twice", vents, "X5", "3", "S4.1"],
      ["already-so", vents, "X5", "6", "S5.6"],
      ["already-so", vents, "X5", "3", null],
    ],
  },
  "fill-pins": {
    good: [
      [vents, "X5", "1 GY ground / 6 BU/WH feed / 7 RD spare"],
      [vents, "X30", "1 BU\n2 GY"],
    ],
    bad: [
      ["point-connector", vents, "X99", "1 GY"],
      ["pins-none", vents, "X5", " \n"],
      ["pins-none", vents, "X5", "GY ground"],
      ["point-terminal", vents, "X30", "9 BU"],
      ["already-so", vents, "X5", "3 words alone"],
    ],
  },
} as const satisfies SomeCases;
