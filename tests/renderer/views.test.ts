import { describe, expect, test } from "vitest";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { PLAIN_WEIGHING } from "../../core/diagnose/weighing.ts";
import { chooseComplaint } from "../../core/edit/commands/chooseComplaint.ts";
import { plantFault } from "../../core/edit/commands/plantFault.ts";
import { liveNow } from "../../core/edit/liveNow.ts";
import type { Action } from "../../renderer/state/action.ts";
import { countsOn } from "../../renderer/state/counts.ts";
import { findable, findIn } from "../../renderer/state/finding.ts";
import { listed } from "../../renderer/state/listing.ts";
import { picturingReaction } from "../../renderer/state/picturing.ts";
import { connectorsOf, pageOf, partOfPoint, thingNamed, wiresByPage } from "../../renderer/state/places.ts";
import { pdfArgument, sheetsWanted } from "../../renderer/state/printing.ts";
import { circuitKey, sampleKey } from "../../renderer/state/shelf.ts";
import { createAppStore } from "../../renderer/state/store.ts";
import {
  complaintNow,
  countsNow,
  differsWire,
  hasFaults,
  meltedNow,
  partNow,
  showsFaults,
  verdictOf,
} from "../../renderer/state/views.ts";
import { FIRST_SETTINGS } from "../../schemas/settings.ts";
import { SMALL, VENTS } from "../edit/given.ts";
import { openIn, stateAfter, watched } from "./stage.ts";

const KEY_ON: Action = { do: "throw", control: "S1", position: "on" };
const put = (fault: string): Action => ({ do: "make", command: (bench) => plantFault(bench, fault) });

describe("counts", () => {
  test("every wire with an end on the page is counted, once for each state it has", () => {
    const state = stateAfter(VENTS, KEY_ON);
    const { bench } = openIn(state).desk;
    const { shown } = liveNow(bench);
    for (const { id } of VENTS.pages) {
      const ids = wiresByPage(VENTS).get(id)!;
      const wanted = ids.reduce((sum, wire) => sum + new Set(shown.wires.get(wire)!.state).size, 0);
      expect(countsOn(VENTS, id, shown).reduce((sum, { count }) => sum + count, 0)).toBe(wanted);
    }
  });

  test("those always fed stand by themselves, after powered", () => {
    const keys = countsNow(stateAfter(VENTS, KEY_ON, { do: "show-page", page: "p1" })).map(({ key }) => key);
    expect(keys.slice(0, 2)).toEqual(["powered", "always-fed"]);
  });

  test("are the same list as long as nothing changed, so that nothing renders", () => {
    const state = stateAfter(VENTS, KEY_ON);
    expect(countsNow({ ...state, said: "else" })).toBe(countsNow(state));
  });
});

describe("views", () => {
  test("the library has none of the bench", () => {
    const state = createAppStore().getState();
    expect([countsNow(state), meltedNow(state)]).toEqual([[], []]);
    expect([complaintNow(state), verdictOf(state, "rear-open-own"), partNow(state, "M4")]).toEqual([null, null, ""]);
  });

  test("what a part does now", () => {
    const state = stateAfter(VENTS, KEY_ON, { do: "throw", control: "S6", position: "open" });
    expect(partNow(state, "S6")).toBe("open");
    expect(partNow(state, "S2")).toBe("Lock-out off, Front left rest, Front right rest, Middle rest, Rear rest");
    expect(partNow(state, "M4")).toMatch(/^runs forward, /);
  });

  test("what differs from the good circuit, while the faults are shown", () => {
    const state = stateAfter(VENTS, KEY_ON, { do: "throw", control: "S6", position: "open" }, put("W46:open"));
    expect([hasFaults(state), showsFaults(state), differsWire(state, "W46")]).toEqual([true, true, true]);
    expect(hasFaults(stateAfter(VENTS, KEY_ON))).toBe(false);
  });

  test("a fuse that melts is told of, with the state it is in", () => {
    const state = stateAfter(VENTS, KEY_ON, put("W5:short-to-ground"));
    expect(meltedNow(state)).toEqual([{ part: "F4", state: "melted" }]);
    expect(meltedNow(state)).toBe(meltedNow({ ...state, said: "else" }));
  });

  test("verdicts count only where there are faults", () => {
    const judged: Action = { do: "judged", answer: { "rear-open-own": "dead" } };
    expect(verdictOf(stateAfter(VENTS, judged), "rear-open-own")).toBeNull();
    expect(verdictOf(stateAfter(VENTS, put("W46:open"), judged), "rear-open-own")).toBe("dead");
  });
});

describe("places", () => {
  test("a point lies on the part whose terminal it carries", () => {
    expect(partOfPoint(VENTS, "S6.6")).toBe("S6");
    expect(partOfPoint(VENTS, "X5-6")).toBe("S5");
    expect(partOfPoint(VENTS, "X5-99")).toBeUndefined();
  });

  test("a wire over two pages is found on the one in sight", () => {
    const { placement } = VENTS;
    const moved = { ...placement, parts: { ...placement.parts, F2: { ...placement.parts.F2!, page: "p3" } } };
    const circuit = { ...VENTS, placement: moved };
    const wire = VENTS.wires.find(({ from, to }) => from.startsWith("F2.") || to.startsWith("F2."))!;
    const pages = VENTS.pages.map(({ id }) => id).filter((id) => wiresByPage(circuit).get(id)!.includes(wire.id));
    expect(pages).toHaveLength(2);
    for (const page of pages) expect(pageOf(circuit, { is: "wire", id: wire.id }, page)).toBe(page);
    expect(pages).toContain(pageOf(circuit, { is: "wire", id: wire.id }, "p4"));
  });

  test("names name wires, parts and points", () => {
    expect(["W1", "S6", "X5-6", "S6.6", "Z1"].map((id) => thingNamed(VENTS, id)?.is)).toEqual([
      "wire",
      "part",
      "point",
      "point",
      undefined,
    ]);
  });

  test("plugs and joints, each once", () => {
    const ids = connectorsOf(SMALL).map(({ id }) => id);
    expect(ids).toEqual([...new Set(ids)]);
    expect(ids).toEqual(expect.arrayContaining(["X1", "X2"]));
  });
});

describe("finding", () => {
  test("a name stands before what only speaks of it", () => {
    expect(findIn(VENTS, "s6", 5).hits[0]).toMatchObject({ name: "S6", thing: { is: "part", id: "S6" } });
    expect(findIn(VENTS, "x5-6", 5).hits[0]).toMatchObject({ name: "X5-6", thing: { is: "point", id: "X5-6" } });
  });

  test("every word must be met, colours in words too; nothing for nothing", () => {
    const found = findIn(VENTS, "wire orange", 100).hits;
    expect(found.length).toBeGreaterThan(0);
    expect(found.every(({ thing }) => thing.is === "wire")).toBe(true);
    expect(findIn(VENTS, "  ", 5)).toEqual({ hits: [], more: 0 });
    expect(findIn(VENTS, "orange unicorn", 5)).toEqual({ hits: [], more: 0 });
  });

  test("no more than asked for, and how many there are beside", () => {
    const { hits, more } = findIn(VENTS, "w", 7);
    expect(hits).toHaveLength(7);
    expect(findIn(VENTS, "w", 7 + more)).toMatchObject({ more: 0 });
    expect(findIn(VENTS, "w", 7 + more).hits).toHaveLength(7 + more);
  });

  test("a connector, a bare terminal, a place on the vehicle and a colour either way are met", () => {
    const first = (typed: string) => findIn(VENTS, typed, 1).hits[0];
    expect(first("X5")).toMatchObject({ name: "X5", thing: { is: "point", id: "X5-1" } });
    expect(first("X5-3")).toMatchObject({ name: "X5-3", about: expect.stringContaining("carries nothing") });
    expect(first("K1.87")).toMatchObject({ thing: { is: "point", id: "K1.87" } });
    const { colour = null, id = "" } = VENTS.wires.find((wire) => /^..\/..$/.test(wire.colour ?? "")) ?? {};
    expect(first(colour ?? "")?.colour).toBe(colour);
    const turned = colour?.split("/").reverse().join("/") ?? "";
    expect(findIn(VENTS, turned, 100).hits.map(({ name }) => name)).toContain(id);
    const [key = "", { access = "" } = {}] = Object.entries(VENTS.reach).find(([, reach]) => reach.access) ?? [];
    const group = VENTS.access.find((each) => each.id === access)?.label ?? "";
    expect(findIn(VENTS, group, 500).hits.some(({ name }) => name.startsWith(key))).toBe(true);
  });

  test("the parts list holds what is met, in the circuit's order", () => {
    expect(listed(VENTS, "")).toBe(VENTS);
    const { parts, wires } = listed(VENTS, "vent motor");
    expect(wires).toEqual([]);
    expect(parts.length).toBeGreaterThan(0);
    expect(VENTS.parts.filter((part) => parts.includes(part))).toEqual(parts);
  });

  test("everything that is found is there", () => {
    expect(findable(VENTS).filter(({ thing }) => thingNamed(VENTS, thing.id)?.is !== thing.is)).toEqual([]);
  });
});

describe("printing", () => {
  const settings = { ...FIRST_SETTINGS, paper: "letter", ink: "colour" } as const;
  const complained = openIn(
    stateAfter(VENTS, KEY_ON, put("W46:open"), {
      do: "make",
      command: (bench) => chooseComplaint(bench, "rear-open-own"),
    }),
  );
  const { bench } = complained.desk;

  test("preview and PDF ask for the same", () => {
    const what = { what: "checklist", page: null, connector: "X6" } as const;
    expect(sheetsWanted(bench, what, settings, PLAIN_WEIGHING)).toMatchObject({
      what: "checklist",
      faults: [{ target: "W46", mode: "open" }],
      complaint: { check: { id: "rear-open-own" }, word: "dead" },
      paper: "letter",
      palette: "light",
    });
    expect(pdfArgument(bench, what, settings, PLAIN_WEIGHING)).toMatchObject({
      what: "checklist",
      condition: "S1=on",
      faults: ["W46:open"],
      complaint: "rear-open-own",
      observed: ["rear-open-own=dead"],
      paper: "letter",
      ink: "colour",
    });
  });

  test("a proof run and a handover page name what was found in place of the faults put in", () => {
    const found = {
      id: "W44:open",
      faults: [{ target: "W44", mode: "open" }],
      title: "",
      repairGroup: "",
      probability: 1,
      notes: [],
    };
    const handover = { told: "", done: "New wire.", after: " ", watch: "", job: "", readings: [] };
    const what = { what: "handover", page: null, connector: "X6", handover } as const;
    expect(sheetsWanted(bench, what, settings, PLAIN_WEIGHING, found)).toMatchObject({ found: found.faults, handover });
    const argument = pdfArgument(bench, what, settings, PLAIN_WEIGHING, found);
    expect(argument).toMatchObject({ faults: ["W44:open"], complaint: "rear-open-own", done: "New wire." });
    expect(argument).not.toHaveProperty("after");
    expect(pdfArgument(bench, what, settings, PLAIN_WEIGHING)).toMatchObject({ faults: [] });
  });

  test("only what the sheet needs is named", () => {
    const sheet = pdfArgument(bench, { what: "sheet", page: "p2", connector: "X6" }, settings, PLAIN_WEIGHING);
    expect(sheet).toMatchObject({ page: "p2" });
    expect(sheet).not.toHaveProperty("connector");
    expect(sheet).not.toHaveProperty("complaint");
    expect(
      pdfArgument(bench, { what: "table", page: "p2", connector: "X6" }, settings, PLAIN_WEIGHING),
    ).not.toHaveProperty("page");
  });
});

describe("pictures of the library", () => {
  const settle = () => new Promise<void>((resolve) => setTimeout(resolve, 5));

  test("are drawn one after the other, each once, and a version anew", async () => {
    const { host } = watched();
    const made = await host.ask("circuits.create", { circuit: VENTS });
    const drawn: Circuit[] = [];
    const store = createAppStore("light", [
      picturingReaction(host, async (circuit) => {
        drawn.push(circuit);
        return { light: "<svg/>", dark: "<svg/>" };
      }),
    ]);
    const list = await host.ask("circuits.list", {});
    const samples = await host.ask("samples.list", {});
    if (!made.ok || !list.ok || !samples.ok) throw new Error("the host refused");
    store.dispatch({ do: "samples-listed", samples: samples.value.samples });
    store.dispatch({ do: "shelved", circuits: list.value.rows, deleted: [], jobs: [], deletedJobs: [], count: 1 });
    await settle();
    expect(Object.keys(store.getState().shelf.pictures).toSorted()).toEqual(
      [circuitKey(list.value.rows[0]!), sampleKey(samples.value.samples[0]!)].toSorted(),
    );
    expect(drawn).toHaveLength(2);
    store.dispatch({ do: "shelved", circuits: list.value.rows, deleted: [], jobs: [], deletedJobs: [], count: 1 });
    await settle();
    expect(drawn).toHaveLength(2);
    store.dispatch({
      do: "shelved",
      circuits: [{ ...list.value.rows[0]!, version: 2 }],
      deleted: [],
      jobs: [],
      deletedJobs: [],
      count: 1,
    });
    await settle();
    expect(drawn).toHaveLength(3);
    // What was drawn of the version before goes: else each edit would leave a picture behind.
    expect(Object.keys(store.getState().shelf.pictures)).toHaveLength(2);
  });
});
