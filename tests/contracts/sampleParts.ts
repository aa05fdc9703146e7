import { KINDS } from "../../core/parts/catalogue.ts";
import type { Kind, Part, Position } from "../../core/parts/kind.ts";

/** A position of a test switch: `position("on", "4-6")`; a name that ends in "<" springs back to rest. */
export function position(name: string, ...joins: readonly string[]): Position {
  const plain = name.replace(/<$/, "");
  const pairs = joins.map((join) => join.split("-") as unknown as readonly [string, string]);
  return plain === name ? { name, joins: pairs } : { name: plain, joins: pairs, springsBackTo: "rest" };
}

/** The own switch of a roof vent: 4 and 5 rest on 1 and 2, and either goes to the feed at 6. */
export const VENT_SWITCH: Part = {
  id: "S6",
  kind: "switch",
  terminals: ["1", "2", "4", "5", "6"],
  positions: [position("rest", "4-1", "5-2"), position("open<", "4-6", "5-2"), position("close<", "4-1", "5-6")],
};

/** A panel of three controls: a lock-out, and two pairs that share the feed F and the return R. */
export const PANEL: Part = {
  id: "S2",
  kind: "switch",
  terminals: ["L", "O", "R", "F", "1", "2", "3", "4"],
  controls: [
    { name: "lock-out", label: "Lock-out", positions: [position("off", "L-O"), position("on")] },
    { name: "left", label: "Left", positions: pair("1", "2") },
    { name: "right", label: "Right", positions: pair("3", "4") },
  ],
};

function pair(a: string, b: string): readonly Position[] {
  return [
    position("rest", `${a}-R`, `${b}-R`),
    position("open<", `${a}-F`, `${b}-R`),
    position("close<", `${a}-R`, `${b}-F`),
  ];
}

/** A wiper stalk: one terminal is a pole in one contact and a throw in another. */
export const STALK: Part = {
  id: "S12",
  kind: "switch",
  positions: [position("off", "53-31b"), position("low", "53-53a"), position("high", "53b-53a")],
};

const DRAWN: Readonly<Record<string, readonly Part[]>> = {
  switch: [
    VENT_SWITCH,
    PANEL,
    STALK,
    { id: "S1", kind: "switch", positions: [position("off"), position("on", "1-2")] },
    {
      id: "S3",
      kind: "switch",
      positions: [position("off"), position("on", "1-2", "2-3")],
      terminals: ["1", "2", "3", "4"],
    },
  ],
  "push-button": [{ id: "S4", kind: "push-button", positions: [position("rest", "1-2"), position("down<", "1-3")] }],
  "ignition-switch": [{ id: "S5", kind: "ignition-switch", terminals: ["30", "15"] }],
  relay: [{ id: "K9", kind: "relay", terminals: ["1", "2", "3", "5", "4"], settings: { form: "change-over" } }],
  splice: [
    { id: "SP1", kind: "splice", settings: { legs: 5, pitch: 12 } },
    { id: "SP2", kind: "splice", terminals: ["in", "a", "b"] },
  ],
  connector: [{ id: "X30", kind: "connector", settings: { ways: 6, pitch: 5 } }],
  "page-link": [{ id: "L1", kind: "page-link", settings: { name: "vent feed" } }],
};

/** Parts to hold a kind to its contract: as it comes, once with each word of each choice, and some drawn by hand. */
export function sampleParts(kind: Kind): readonly Part[] {
  const plain: Part = { id: "P1", kind: kind.name };
  const chosen = kind.settings.flatMap(({ name, value }): readonly Part[] => {
    if (value.type === "choice") return value.choices.map((word) => ({ ...plain, settings: { [name]: word } }));
    return value.type === "yes-no" ? [{ ...plain, settings: { [name]: !value.usual } }] : [];
  });
  return [plain, ...chosen, ...(DRAWN[kind.name] ?? [])];
}

/** Every kind with every sample of it at 12 and at 24 V. */
export const CASES: readonly { readonly kind: Kind; readonly part: Part; readonly nominalVolts: number }[] =
  KINDS.flatMap((kind) =>
    sampleParts(kind).flatMap((part) => [12, 24].map((nominalVolts) => ({ kind, part, nominalVolts }))),
  );
