import { ok } from "../../../core/base/outcome.ts";
import { benchText, readBench } from "../../../renderer/state/benchText.ts";
import type { Door } from "../door.ts";
import { hornCircuit } from "./given.ts";

const KEPT = { id: "c1", version: 1, benchVersion: 1 } as const;

/** What comes to the page from its own library. */
export const PAGE_DOORS: readonly Door[] = [
  {
    name: "bench kept in the library",
    kind: "json",
    seeds: async () => [
      benchText(readBench(hornCircuit(), null, KEPT)),
      benchText(
        readBench(
          hornCircuit(),
          '{"version":1,"bench":{"condition":{"set":{"S1":"pressed"}},"faults":["W15:open"]}}',
          KEPT,
        ),
      ),
    ],
    open: (input) => ok(readBench(hornCircuit(), String(input), KEPT)),
    share: 4,
    mostMs: 4_000,
  },
];
