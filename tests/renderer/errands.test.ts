import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { refuse } from "../../core/base/outcome.ts";
import { addUnderlay } from "../../core/edit/commands/addUnderlay.ts";
import { changeLength } from "../../core/edit/commands/changeLength.ts";
import type { Action } from "../../renderer/state/action.ts";
import { begin } from "../../renderer/state/begin.ts";
import { openFile } from "../../renderer/state/openFile.ts";
import { actionFor, listen } from "../../renderer/state/requests.ts";
import type { OpenedCircuit } from "../../schemas/calls.ts";
import { formatCircuit, readCircuit } from "../../schemas/circuit.ts";
import { LIMITS } from "../../schemas/limits.ts";
import { SHEET } from "../circuit/printed.ts";
import { got, VENTS } from "../edit/given.ts";
import { openIn, pageOn, watched } from "./stage.ts";

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const LENGTHEN: Action = { do: "make", command: (bench) => changeLength(bench, "W13", "4") };
const settle = () => vi.advanceTimersByTimeAsync(0);

/** A page whose library holds circuits of these titles. */
async function libraryOf(...titles: readonly string[]) {
  const seen = watched();
  const ids: string[] = [];
  for (const title of titles) {
    const made: OpenedCircuit = got(await seen.host.ask("circuits.create", { circuit: { ...VENTS, title } }));
    ids.push(made.id);
  }
  const page = pageOn(seen);
  await begin(page.host, page.store);
  await settle();
  page.calls.length = 0;
  const titlesNow = () => page.store.getState().shelf.circuits.map(({ title }) => title);
  const notices = () => page.store.getState().notices.map(({ title, words }) => `${title} ${words}`);
  return { ...page, ids, titlesNow, notices };
}

/** What the host was asked, but for the jobs of a circuit, which are read whenever they may have changed. */
function namesIn(calls: readonly { readonly name: string }[]): readonly string[] {
  return calls.map(({ name }) => name).filter((name) => name !== "jobs.list");
}

describe("the start", () => {
  test("shows library, samples and settings", async () => {
    const { store, titlesNow } = await libraryOf("One", "Two");
    expect(titlesNow().toSorted()).toEqual(["One", "Two"]);
    expect(store.getState()).toMatchObject({ isStarted: true, open: null });
    expect(store.getState().shelf.samples.map(({ sample }) => sample)).toEqual(["vents"]);
  });

  /** A page whose host says that a circuit was open. */
  async function startedWith(id: string, code: string | null) {
    const seen = watched();
    const made = got(await seen.host.ask("circuits.create", { circuit: VENTS }));
    const { host } = seen;
    const ask: typeof host.ask = async (name, argument) => {
      const answer = await host.ask(name, argument);
      return name === "start" && answer.ok ? { ok: true, value: { ...answer.value, open: id } } : answer;
    };
    seen.refuse("circuits.open", code);
    const page = pageOn({ ...seen, host: { name: "memory", ask } });
    await begin(page.host, page.store);
    await settle();
    return { ...page, made };
  }

  test("brings back what was open", async () => {
    const { store, made } = await startedWith("c1", null);
    expect(openIn(store).id).toBe(made.id);
  });

  test("shows the library where that cannot be opened, and says why", async () => {
    const { store } = await startedWith("c1", "version-damaged");
    const { open, shelf, notices } = store.getState();
    expect(open).toBeNull();
    expect(shelf.circuits).toHaveLength(1);
    expect(notices).toMatchObject([{ title: "That circuit was not opened." }]);
  });

  test("a library that is locked is told in a sentence, samples come all the same, and another try is a start", async () => {
    const page = pageOn();
    page.refuse("start", "store-locked");
    await begin(page.host, page.store);
    expect(page.store.getState()).toMatchObject({
      isStarted: false,
      shelf: { trouble: "The library is open in another Wirefathom. Close that one, then try again." },
    });
    expect(page.store.getState().shelf.samples).toHaveLength(1);
    page.refuse("start", null);
    page.store.dispatch({ do: "retry" });
    await settle();
    expect(page.store.getState()).toMatchObject({ isStarted: true, shelf: { isRead: true, trouble: null } });
  });

  test("a host that is gone is told, never an empty page", async () => {
    const page = pageOn();
    page.fail(true);
    await begin(page.host, page.store);
    expect(page.store.getState().shelf).toMatchObject({
      isRead: true,
      trouble: "The program behind this page does not answer. Start it again; what was kept is still there.",
    });
  });
});

describe("the library", () => {
  test("search shows what was typed last, though an older answer comes later", async () => {
    const { store, hold, titlesNow } = await libraryOf("Horn", "Wiper");
    const letGo = hold("circuits.list");
    store.dispatch({ do: "search", words: "horn" });
    store.dispatch({ do: "search", words: "wip" });
    await settle();
    expect(titlesNow()).toEqual(["Wiper"]);
    letGo();
    await settle();
    expect(titlesNow()).toEqual(["Wiper"]);
  });

  test("a search longer than any title is no trouble", async () => {
    const { store, sent } = await libraryOf("Horn");
    store.dispatch({ do: "search", words: "x".repeat(5000) });
    await settle();
    expect(sent("circuits.list")[0]!.search!.length).toBeLessThanOrEqual(200);
  });

  test("rename, duplicate, remove and restore show in the list", async () => {
    const { store, ids, titlesNow } = await libraryOf("Horn");
    const id = ids[0]!;
    store.dispatch({ do: "begin-rename", id });
    store.dispatch({ do: "rename", id, title: "Horn, 2019" });
    await settle();
    expect(store.getState().shelf.renaming).toBeNull();
    expect(titlesNow()).toEqual(["Horn, 2019"]);
    store.dispatch({ do: "duplicate", id });
    await settle();
    expect(titlesNow()).toHaveLength(2);
    store.dispatch({ do: "remove", id });
    await settle();
    expect(titlesNow()).not.toContain("Horn, 2019");
    const [notice] = store.getState().notices;
    expect(notice).toMatchObject({ title: "Horn, 2019 is deleted.", offers: [{ words: "Bring it back" }] });
    expect(store.getState().shelf.deleted.map(({ title }) => title)).toEqual(["Horn, 2019"]);
    store.dispatch(notice!.offers![0]!.action);
    await settle();
    expect(titlesNow()).toContain("Horn, 2019");
    expect(store.getState().shelf.deleted).toEqual([]);
  });

  test.each([
    ["rename", "circuits.rename", "Not renamed."],
    ["duplicate", "circuits.duplicate", "Not duplicated."],
    ["remove", "circuits.remove", "Not deleted."],
    ["restore", "circuits.restore", "Not brought back."],
    ["open-circuit", "circuits.open", "That circuit was not opened."],
  ] as const)("%s that is refused is one plain sentence", async (errand, call, title) => {
    const { store, ids, refuse: refuses, notices } = await libraryOf("Horn");
    refuses(call, "circuit-unknown");
    store.dispatch({ do: errand, id: ids[0]!, title: "Other" });
    await settle();
    expect(notices()).toEqual([`${title} This circuit is no longer in the library.`]);
  });

  test("a host that is gone is one plain sentence", async () => {
    const { store, ids, fail, notices } = await libraryOf("Horn");
    fail(true);
    store.dispatch({ do: "duplicate", id: ids[0]! });
    await settle();
    expect(notices()).toEqual([
      "No answer. The program behind this page does not answer. Start it again; what was kept is still there.",
    ]);
  });

  test("of two circuits opened one after the other the last is on the bench", async () => {
    const { store, ids, hold } = await libraryOf("Horn", "Wiper");
    const letGo = hold("circuits.open");
    store.dispatch({ do: "open-circuit", id: ids[0]! });
    await settle();
    store.dispatch({ do: "open-circuit", id: ids[1]! });
    await settle();
    letGo();
    await settle();
    expect(openIn(store).id).toBe(ids[1]);
  });

  test("closing tells the host and shows the library as it is then", async () => {
    const { store, ids, calls } = await libraryOf("Horn");
    store.dispatch({ do: "open-circuit", id: ids[0]! });
    await settle();
    store.dispatch(LENGTHEN);
    store.dispatch({ do: "close" });
    await settle();
    expect(namesIn(calls)).toEqual([
      "circuits.open",
      "circuits.save",
      "circuits.close",
      "circuits.list",
      "circuits.list",
    ]);
    expect(store.getState().shelf.circuits[0]!.version).toBe(2);
  });
});

describe("files", () => {
  const file = (text: string | Uint8Array<ArrayBuffer>, name = "horn.circuit.json") => new File([text], name);

  test("a circuit file that is dropped in is opened, and what was on the bench is kept", async () => {
    const { store, ids, sent } = await libraryOf("Horn");
    store.dispatch({ do: "open-circuit", id: ids[0]! });
    await settle();
    store.dispatch(LENGTHEN);
    await openFile(store, file(formatCircuit({ ...VENTS, title: "From a file" })));
    await settle();
    expect(openIn(store).desk.bench.circuit.title).toBe("From a file");
    expect(sent("circuits.save")).toHaveLength(1);
  });

  test.each([
    ["an empty one", file(""), "The file is empty."],
    ["a PDF", file("%PDF-1.7", "a.pdf"), "This is a PDF, not a circuit file."],
    [
      "a text",
      file("Dear all"),
      "This is not a circuit file: it begins with Dear all where a circuit begins with an opening brace.",
    ],
    ["bytes", file(new Uint8Array([1, 0, 2, 255])), "This is not a text, not a circuit file."],
    [
      "one too large",
      file(new Uint8Array(LIMITS.bytes + 1)),
      "The file is larger than 20 MB; a circuit is far smaller.",
    ],
    ["another format", file('{"format":"other"}'), null],
    ["one cut off", file(formatCircuit(VENTS).slice(0, 5000)), null],
  ])("%s is told in one sentence, and the bench stays as it is", async (_, wrong, words) => {
    const { store, ids, notices } = await libraryOf("Horn");
    store.dispatch({ do: "open-circuit", id: ids[0]! });
    await settle();
    store.dispatch(LENGTHEN);
    const { desk } = openIn(store);
    await openFile(store, wrong);
    await settle();
    expect(openIn(store).desk).toBe(desk);
    const [notice, ...more] = notices();
    expect(more).toEqual([]);
    expect(notice).toMatch(new RegExp(`^${wrong.name} was not opened\\. \\S.*\\.$`));
    if (words !== null) expect(notice).toBe(`${wrong.name} was not opened. ${words}`);
  });

  test("what cannot be read at all, as a folder, is told", async () => {
    const { store, notices } = await libraryOf("Horn");
    const folder = file("");
    folder.arrayBuffer = () => Promise.reject(new Error("a folder"));
    await openFile(store, folder);
    expect(notices()).toEqual(["horn.circuit.json was not opened. horn.circuit.json cannot be read."]);
  });

  test("a file that the library had already says so", async () => {
    const { store, notices } = await libraryOf("Horn");
    const opened = { id: "c1", version: 1, circuit: VENTS, bench: null, benchVersion: 0, known: true };
    store.dispatch({ do: "opened", opened });
    expect(notices()).toEqual([
      "In the library already. This is the circuit you had, with all that was done to it since.",
    ]);
  });

  test("choosing a file without the host's dialog uses the page's own field, once all is kept", async () => {
    const { store, ids, chosen, calls } = await libraryOf("Horn");
    store.dispatch({ do: "open-circuit", id: ids[0]! });
    await settle();
    store.dispatch(LENGTHEN);
    store.dispatch({ do: "choose-file" });
    await settle();
    expect(chosen.count).toBe(1);
    expect(namesIn(calls)).toEqual(["circuits.open", "circuits.save", "files.open"]);
  });

  test("a file is saved as the circuit stands, though the library cannot be written", async () => {
    const { store, downloads, refuse: refuses } = await libraryOf();
    refuses("circuits.create", "store-full");
    store.dispatch({ do: "open-sample", sample: "vents" });
    await settle();
    store.dispatch(LENGTHEN);
    store.dispatch({ do: "save-file" });
    await settle();
    expect(downloads).toMatchObject([{ name: "Roof vents.circuit.json", encoding: "text" }]);
    expect(got(readCircuit(downloads[0]!.content))).toEqual(openIn(store).desk.bench.circuit);
  });

  test("a circuit over printed pages is saved with them, and without them where a picture is missing", async () => {
    const { store, downloads, notices, ids, sent } = await libraryOf("Horn");
    store.dispatch({ do: "open-circuit", id: ids[0]! });
    await settle();
    const { page } = openIn(store);
    const { title, image } = SHEET;
    store.dispatch({ do: "make", command: (bench) => addUnderlay(bench, page, { title, image }) });
    store.dispatch({ do: "save-file" });
    await settle();
    expect(sent("circuits.pack")).toHaveLength(1);
    expect(downloads).toMatchObject([{ name: "Horn.circuit.json", encoding: "text" }]);
    expect(got(readCircuit(downloads[0]!.content)).pages.some(({ underlays }) => underlays?.length === 1)).toBe(true);
    expect(notices().at(-1)).toMatch(/^Saved without its printed pages and photos\. /);
  });

  test("a packed circuit that is dropped in goes to the host as it is", async () => {
    const { store, sent, notices } = await libraryOf("Horn");
    const packed = new Uint8Array([0x50, 0x4b, 3, 4, 250, 0, 7]);
    await openFile(store, file(packed, "horn.wirefathom"));
    await settle();
    expect(sent("circuits.unpack")).toMatchObject([{ bytes: Buffer.from(packed).toString("base64") }]);
    expect(notices().at(-1)).toMatch(/^horn\.wirefathom was not opened\. /);
  });

  test("a PDF goes to the browser under the host's name, and a refusal is told", async () => {
    const seen = watched();
    const { host } = seen;
    let pdf: ReturnType<typeof refuse> | null = refuse("print-too-long", { seconds: 30 });
    const ask: typeof host.ask = async (name, argument) => {
      if (name !== "print.pdf") return host.ask(name, argument);
      const answer = { pdf: "JVBERg==", name: "Roof vents.pdf", sheets: 1 };
      return (pdf ?? { ok: true, value: answer }) as Awaited<ReturnType<typeof host.ask<typeof name>>>;
    };
    const page = pageOn({ ...seen, host: { name: "memory", ask } });
    page.store.dispatch({ do: "sample-opened", circuit: VENTS });
    page.store.dispatch({ do: "save-pdf" });
    await settle();
    expect(page.store.getState().notices).toMatchObject([
      { title: "Not printed.", words: "The sheets took longer than 30 s and were given up." },
    ]);
    pdf = null;
    page.store.dispatch({ do: "save-pdf" });
    await settle();
    expect(page.downloads).toEqual([{ name: "Roof vents.pdf", content: "JVBERg==", encoding: "base64" }]);
  });

  test("settings reach the host", async () => {
    const { store, host } = await libraryOf();
    store.dispatch({ do: "set", settings: { theme: "dark" } });
    await settle();
    expect(store.getState().theme).toBe("dark");
    expect(got(await host.ask("settings.get", {})).theme).toBe("dark");
  });
});

describe("requests from outside the page", () => {
  test("each comes to an action", () => {
    expect(actionFor({ ask: "open", id: "c1" })).toEqual({ do: "open-circuit", id: "c1" });
    expect(actionFor({ ask: "menu", command: "save-copy" })).toEqual({ do: "save-file" });
    expect(actionFor({ ask: "tell", refusal: { code: "file-empty", about: {} } })).toMatchObject({
      notice: { title: "That file was not opened.", words: "The file is empty." },
    });
  });

  test("are met one after the other, and a host that fails is not pressed", async () => {
    const { store, host } = pageOn();
    const pauses: number[] = [];
    const answers = [
      () =>
        Promise.resolve({ ok: true, value: { request: { ask: "tell", refusal: { code: "file-empty", about: {} } } } }),
      () => Promise.reject(new Error("gone")),
      () => Promise.resolve(refuse("store-closed")),
      () => Promise.resolve({ ok: true, value: { request: null } }),
    ];
    const ask = ((name: string) => {
      expect(name).toBe("nextRequest");
      return answers.shift()?.() ?? new Promise(() => {});
    }) as typeof host.ask;
    void listen({ name: "electron", ask }, store, async (ms) => {
      pauses.push(ms);
    });
    await settle();
    expect(answers).toEqual([]);
    expect(pauses).toEqual([2000, 2000]);
    expect(store.getState().notices).toHaveLength(1);
  });
});
