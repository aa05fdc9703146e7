import { describe, expect, test } from "vitest";
import { connector } from "../../core/parts/connector.ts";
import { ignitionSwitch } from "../../core/parts/ignitionSwitch.ts";
import type { Around, Kind, Part, PartView, Settings } from "../../core/parts/kind.ts";
import { limitSwitch } from "../../core/parts/limitSwitch.ts";
import { pageLink } from "../../core/parts/pageLink.ts";
import { pushButton } from "../../core/parts/pushButton.ts";
import { splice } from "../../core/parts/splice.ts";
import { viewOf } from "../../core/parts/view.ts";

function view(kind: Kind, settings: Settings = {}, more: Partial<Part> = {}): PartView {
  return viewOf(kind, { id: "P1", kind: kind.name, settings, ...more }, 12);
}

function closed(kind: Kind, at: PartView, position: string): readonly string[] {
  const around: Around = {
    positions: { "": position },
    drive: {},
    engineRunning: false,
    ambientC: 20,
    nominalVolts: 12,
  };
  return kind.closed(at, "", around);
}

describe("a splice", () => {
  test("brings every leg to one hidden node, so that one leg can be open by itself", () => {
    const model = splice.model(view(splice, { legs: 3 }));
    expect(model.map(({ a, b, key }) => [key, a, b])).toEqual([
      ["leg-1", "1", "~splice"],
      ["leg-2", "2", "~splice"],
      ["leg-3", "3", "~splice"],
    ]);
    const open = splice.faults(view(splice)).find(({ mode }) => mode === "leg-2-open")!;
    expect(open.effects(0)).toEqual([{ does: "open", element: "leg-2" }]);
  });

  test("stretched over parts hangs its legs at the pitch given, and takes its last leg in at the left", () => {
    const { terminals } = splice.symbol(
      view(splice, { legs: 5, pitch: 12 }),
      { closed: new Set(), rest: new Set(), state: "" },
      "iec",
    );
    expect(["1", "2", "3", "4"].map((leg) => [terminals[leg]!.x, terminals[leg]!.side])).toEqual([
      [2, "down"],
      [14, "down"],
      [26, "down"],
      [38, "down"],
    ]);
    expect(terminals["5"]).toMatchObject({ x: 0, side: "left" });
  });
});

describe("an in-line connector", () => {
  test("has one conductor for each place, named by its number", () => {
    const at = view(connector, { ways: 2 });
    expect(at.terminals).toEqual(["1a", "1b", "2a", "2b"]);
    expect(connector.model(at).map(({ a, b, key }) => [key, a, b])).toEqual([
      ["1", "1a", "1b"],
      ["2", "2a", "2b"],
    ]);
  });

  test("leaves out a place of which only one half is drawn", () => {
    const at = view(connector, {}, { terminals: ["1a", "1b", "2a"] });
    expect(connector.model(at).map(({ key }) => key)).toEqual(["1"]);
  });
});

describe("a page link", () => {
  test("is one net with every other link of its name", () => {
    expect(pageLink.model(view(pageLink, { name: "vent feed" }))).toEqual([
      { key: "link", a: "1", b: "=link:vent feed", law: { law: "joint" }, passes: "conductor" },
    ]);
  });

  test("without a name joins nothing", () => {
    expect(pageLink.model(view(pageLink, { name: "  " }))[0]!.b).toBe("~alone");
  });
});

describe("an ignition switch", () => {
  // Terminals 30, 15 and 50 of DIN 72552; 75 from memory.
  test("feeds 75, then 15 as well, and in start 15 and 50, from where it springs back to on", () => {
    const at = view(ignitionSwitch);
    expect(["off", "accessory", "on", "start"].map((position) => closed(ignitionSwitch, at, position))).toEqual([
      [],
      ["30-75"],
      ["30-75", "30-15"],
      ["30-15", "30-50"],
    ]);
    expect(at.controls[0]!.positions.map(({ springsBackTo }) => springsBackTo)).toEqual([
      undefined,
      undefined,
      undefined,
      "on",
    ]);
  });

  test("takes its own positions where the circuit writes them", () => {
    const at = view(
      ignitionSwitch,
      {},
      {
        positions: [
          { name: "off", joins: [] },
          { name: "on", joins: [["1", "2"]] },
        ],
      },
    );
    expect([at.terminals, closed(ignitionSwitch, at, "on")]).toEqual([["1", "2"], ["1-2"]]);
  });
});

describe("a switch of two positions", () => {
  test.each([
    ["normally open", [], ["1-2"]],
    ["normally closed", ["1-2"], []],
    ["change-over", ["1-2"], ["1-4"]],
  ])("%s: at rest and moved", (contact, rest, moved) => {
    expect([
      closed(limitSwitch, view(limitSwitch, { contact }), "free"),
      closed(limitSwitch, view(limitSwitch, { contact }), "at-end"),
    ]).toEqual([rest, moved]);
  });

  test("springs back to rest where it is a push button", () => {
    expect(pushButton.controls({ id: "S1", kind: "push-button" })[0]!.positions[1]).toMatchObject({
      name: "pressed",
      springsBackTo: "rest",
    });
  });
});
