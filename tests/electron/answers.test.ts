import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ok } from "../../core/base/outcome.ts";
import { WORDS } from "../../core/base/words.ts";
import { ANSWERS } from "../../electron/answers/answers.ts";
import { answer, answerText } from "../../electron/answers/door.ts";
import { CALL_NAMES } from "../../schemas/callNames.ts";
import { type Argument, CALLS } from "../../schemas/calls.ts";
import { formatCircuit } from "../../schemas/circuit.ts";
import { isExerciseText } from "../../schemas/exercise.ts";
import { FIRST_SETTINGS } from "../../schemas/settings.ts";
import { ask, code, got, hostOn, MORNING, ownFolder, value } from "./library.ts";
import { png } from "./pictureFiles.ts";
import { sample, sampleText } from "./sample.ts";

const BENCH = '{"condition":{"set":{"S1":"on"}}}';

describe("the list of calls", () => {
  it("has a schema and a function for each name, and no more", () => {
    expect(Object.keys(CALLS).toSorted()).toEqual([...CALL_NAMES].toSorted());
    expect(Object.keys(ANSWERS).toSorted()).toEqual([...CALL_NAMES].toSorted());
  });

  it.each(CALL_NAMES)("%s refuses what is no argument of it", async (name) => {
    const host = hostOn(ownFolder());
    for (const sent of [undefined, null, 7, "text", [], { unknown: true }]) {
      expect(code(await answer(host, name, sent))).toBe("call-argument");
    }
  });
});

describe("a first start", () => {
  it("finds an empty library, first settings and the samples in the order of their numbers", async () => {
    const host = hostOn(ownFolder());
    expect(await got(host, "start", {})).toEqual({
      version: "0.0.0",
      host: "loopback",
      library: { where: "here", name: "" },
      settings: FIRST_SETTINGS,
      count: 0,
      recent: [],
      open: null,
      exercise: null,
      notices: [],
    });
    const { samples } = await got(host, "samples.list", {});
    const numbers = samples.map(({ sample }) => Number(/^\d+/.exec(sample)?.[0]));
    expect(numbers).toEqual(samples.map((_, at) => at + 1));
    const [exercise] = samples.flatMap(({ exercises }) => exercises);
    const { text } = await got(host, "samples.exercise", { exercise: exercise! });
    expect(isExerciseText(text)).toBe(true);
    expect(code(await ask(host, "samples.exercise", { exercise: "../LICENSE" }))).toBe("sample-unknown");
  });

  it("opens the file it was given, once", async () => {
    const folder = ownFolder();
    const file = join(folder, "mine.circuit.json");
    writeFileSync(file, sampleText());
    const host = hostOn(join(folder, "library"));
    host.requests.setStartFile(file);
    const { open, count } = await got(host, "start", {});
    expect({ count, open }).toEqual({ count: 1, open: expect.any(String) });
    expect(await got(host, "start", {})).toMatchObject({ count: 1, open });
  });

  it("tells of a given file that cannot be read, and starts all the same", async () => {
    const host = hostOn(ownFolder());
    host.requests.setStartFile("/nowhere/at-all.circuit.json");
    const { open, notices } = await got(host, "start", {});
    expect({ open, codes: notices.map((notice) => notice.code) }).toEqual({ open: null, codes: ["file-missing"] });
  });
});

describe("a circuit in the library", () => {
  it("keeps edits as versions, benches beside them, and comes back as it was left", async () => {
    const folder = ownFolder();
    const host = hostOn(folder);
    const { id, version, bench } = await got(host, "circuits.create", { circuit: sample("Horn") });
    expect({ version, bench }).toEqual({ version: 1, bench: null });
    const edited = sample("Horn, second");
    expect(
      await got(host, "circuits.save", {
        id,
        version: 1,
        circuit: edited,
        bench: BENCH,
        benchVersion: 0,
        name: "Rename",
      }),
    ).toMatchObject({ version: 2 });
    const thrown = { id, version: 2, bench: `${BENCH} `, benchVersion: 1 };
    expect(await got(host, "benches.save", thrown)).toMatchObject({ version: 2, benchVersion: 2 });
    const same = { id, version: 2, circuit: edited, bench: BENCH, benchVersion: 2, name: "Throw" };
    expect(await got(host, "circuits.save", same)).toMatchObject({ version: 2, benchVersion: 3 });
    await host.keeper.close();

    const again = hostOn(folder);
    expect(await got(again, "start", {})).toMatchObject({
      count: 1,
      open: id,
      recent: [{ id, title: "Horn, second" }],
    });
    expect(await got(again, "circuits.open", { id })).toEqual({
      id,
      version: 2,
      circuit: edited,
      bench: BENCH,
      benchVersion: 3,
      isBenchOlder: false,
      known: false,
    });
    const { versions } = await got(again, "circuits.versions", { id });
    expect(versions.map((row) => [row.version, row.name])).toEqual([
      [2, "Rename"],
      [1, "Begun"],
    ]);
    expect(await got(again, "circuits.version", { id, version: 1 })).toEqual({ circuit: sample("Horn") });
  });

  it("refuses a circuit that its file would refuse, with the same code and path", async () => {
    const host = hostOn(ownFolder());
    const circuit = sample();
    const broken = { ...circuit, wires: [{ id: "W1", from: "nowhere.1", to: "G1.+" }] };
    const refused = await ask(host, "circuits.create", { circuit: broken });
    const read = await ask(host, "circuits.import", { text: formatCircuit(broken) });
    expect(refused).toEqual(read);
    expect(code(refused)).toBe("point-part");
  });

  it("goes to the bin and back, and leaves no trace in lists, search or start meanwhile", async () => {
    const host = hostOn(ownFolder());
    const { id } = await got(host, "circuits.create", { circuit: sample("Horn") });
    expect(await got(host, "circuits.remove", { id })).toMatchObject({ removed: MORNING.toISOString() });
    expect((await got(host, "circuits.list", {})).count).toBe(0);
    expect((await got(host, "circuits.list", { search: "horn" })).count).toBe(0);
    expect(await got(host, "start", {})).toMatchObject({ open: null, recent: [], count: 0 });
    expect(code(await ask(host, "circuits.open", { id }))).toBe("circuit-unknown");
    expect((await got(host, "circuits.list", { where: "bin" })).rows.map((row) => row.id)).toEqual([id]);
    await got(host, "circuits.restore", { id });
    expect((await got(host, "circuits.list", { search: "horn" })).rows.map((row) => row.id)).toEqual([id]);
  });

  it("is let go of at once where that is asked for, with all that was kept of it", async () => {
    const host = hostOn(ownFolder());
    const { id } = await got(host, "circuits.create", { circuit: sample("Horn"), bench: BENCH });
    expect(await got(host, "circuits.remove", { id, isForGood: true })).toMatchObject({ id, title: "Horn" });
    expect((await got(host, "circuits.list", { where: "bin" })).count).toBe(0);
    expect(code(await ask(host, "circuits.restore", { id }))).toBe("circuit-unknown");
    const { connection } = value(await host.keeper.store());
    for (const table of ["circuits", "versions", "benches", "recent"])
      expect(connection.prepare(`SELECT count(*) FROM ${table}`).pluck().get()).toBe(0);
  });

  it("is let go of after 30 days in the bin, not before", async () => {
    const folder = ownFolder();
    const host = hostOn(folder);
    const { id } = await got(host, "circuits.create", { circuit: sample("Horn") });
    await got(host, "circuits.remove", { id });
    const countAfter = async (day: string): Promise<number> => {
      const later = hostOn(folder);
      later.setNow(new Date(`${day}T09:00:00Z`));
      await later.keeper.store();
      await later.keeper.close();
      const reader = hostOn(folder);
      const { count } = await got(reader, "circuits.list", { where: "bin" });
      await reader.keeper.close();
      return count;
    };
    await host.keeper.close();
    expect(await countAfter("2026-03-31")).toBe(1);
    expect(await countAfter("2026-04-02")).toBe(0);
  });

  it("is duplicated under a free title, with its bench, and renamed as a version of its own", async () => {
    const host = hostOn(ownFolder());
    const { id } = await got(host, "circuits.create", { circuit: sample("Horn"), bench: BENCH });
    const copy = await got(host, "circuits.duplicate", { id });
    const second = await got(host, "circuits.duplicate", { id: copy.id });
    expect([copy.title, second.title]).toEqual(["Horn (copy)", "Horn (copy 2)"]);
    expect((await got(host, "circuits.open", { id: second.id })).bench).toBe(BENCH);
    expect(await got(host, "circuits.rename", { id, title: "  Horns  " })).toMatchObject({
      title: "Horns",
      version: 2,
    });
    expect((await got(host, "circuits.open", { id })).circuit.title).toBe("Horns");
    expect(code(await ask(host, "circuits.rename", { id, title: "  " }))).toBe("call-argument");
  });

  it("gives the bytes of its file, and a file name for it", async () => {
    const host = hostOn(ownFolder());
    const { id } = await got(host, "circuits.import", { text: sampleText() });
    const exported = await got(host, "circuits.exportText", { id });
    expect(exported.text).toBe(sampleText());
    expect(exported.name).toMatch(/^\S.*\.circuit\.json$/);
  });

  it("from a file that was brought in before is the one of then, with its edits", async () => {
    const host = hostOn(ownFolder());
    const { id } = await got(host, "circuits.import", { text: sampleText() });
    await got(host, "circuits.save", {
      id,
      version: 1,
      circuit: sample("Mine"),
      bench: "",
      benchVersion: 0,
      name: "Rename",
    });
    expect(await got(host, "circuits.import", { text: sampleText() })).toMatchObject({
      id,
      known: true,
      circuit: { title: "Mine" },
    });
    await got(host, "circuits.remove", { id });
    expect(await got(host, "circuits.import", { text: sampleText() })).toMatchObject({ known: false });
  });
});

describe("search", () => {
  it.each([
    ["the title", "horn", true],
    ["the beginning of a word", "hor", true],
    ["two words in any order", "circuit horn", true],
    ["accents left away", "cafe", true],
    ["a part", "k1", true],
    ["a wire colour", "BK/YE", true],
    ["a word that is nowhere", "zeppelin", false],
    ["one word of two that is nowhere", "horn zeppelin", false],
    ["signs alone", "/* \" '", false],
    ["what the index takes for an operator", "horn OR zeppelin", false],
    ["quotes and stars", '"horn"*', true],
  ])("by %s", async (_, search, isFound) => {
    const host = hostOn(ownFolder());
    const circuit = { ...sample("Horn circuit", "4-horn"), vehicle: "Café racer" };
    const wires = circuit.wires.map((wire, index) => (index === 0 ? { ...wire, colour: "BK/YE" } : wire));
    await got(host, "circuits.create", { circuit: { ...circuit, wires } });
    expect((await got(host, "circuits.list", { search })).count).toBe(isFound ? 1 : 0);
  });

  it("puts the title before what is only inside, and gives pages of the list", async () => {
    const host = hostOn(ownFolder());
    for (const title of ["Relay of the horn", "Blower", "Horn"]) {
      await got(host, "circuits.create", { circuit: sample(title, title === "Blower" ? "5-blower" : "4-horn") });
    }
    const { rows, count } = await got(host, "circuits.list", { search: "blower" });
    expect({ first: rows[0]?.title, count }).toEqual({ first: "Blower", count: 1 });
    const page = await got(host, "circuits.list", { from: 1, limit: 1 });
    expect({ titles: page.rows.map((row) => row.title), count: page.count }).toEqual({ titles: ["Blower"], count: 3 });
  });

  it("follows an edit", async () => {
    const host = hostOn(ownFolder());
    const { id } = await got(host, "circuits.create", { circuit: sample("Horn") });
    await got(host, "circuits.save", {
      id,
      version: 1,
      circuit: sample("Zeppelin"),
      bench: "",
      benchVersion: 0,
      name: "",
    });
    expect((await got(host, "circuits.list", { search: "zeppelin" })).count).toBe(1);
  });
});

describe("settings", () => {
  it("change by themselves and outlast a restart", async () => {
    const folder = ownFolder();
    const host = hostOn(folder);
    expect(await got(host, "settings.set", { theme: "dark" })).toEqual({ ...FIRST_SETTINGS, theme: "dark" });
    await got(host, "settings.set", { scale: 1.5 });
    await host.keeper.close();
    expect(await got(hostOn(folder), "settings.get", {})).toEqual({ ...FIRST_SETTINGS, theme: "dark", scale: 1.5 });
    expect(code(await ask(hostOn(folder), "settings.set", { scale: 99 }))).toBe("call-argument");
  });
});

describe("files", () => {
  it("chosen by a dialog are opened; what a host without dialogs says goes to the page", async () => {
    const folder = ownFolder();
    const file = join(folder, "a.circuit.json");
    writeFileSync(file, sampleText());
    const host = hostOn(join(folder, "library"), { chooseFile: async () => ok({ path: file }) });
    expect(await got(host, "files.open", {})).toMatchObject({ done: "opened", opened: { version: 1 } });
    expect(await got(hostOn(ownFolder()), "files.open", {})).toEqual({ done: "choose" });
    writeFileSync(file, "{}");
    expect(code(await ask(host, "files.open", {}))).toBe("file-format");
  });

  it.each(["../a.pdf", "a/b.pdf", "C:\\a.pdf", "a.exe", "a.pdf.exe", ".pdf", "a\u0000.pdf", "", "nul"])(
    "are not written under the name %j",
    async (name) => {
      const host = hostOn(ownFolder());
      expect(code(await ask(host, "files.save", { name, content: "" }))).toBe("call-argument");
    },
  );
});

describe("printing", () => {
  it("gives a PDF of the sheets that are asked for, and refuses as the command line does", async () => {
    const host = hostOn(ownFolder());
    const circuit = sample(undefined, "1-roof-vents");
    const asked = { circuit, what: "sheet", page: "p2", condition: "S1=on,S5=open" } as const;
    const { pdf, name, sheets } = await got(host, "print.pdf", asked);
    expect(Buffer.from(pdf, "base64").subarray(0, 5).toString()).toBe("%PDF-");
    expect({ sheets, name }).toEqual({ sheets: 1, name: `${circuit.title}, circuit sheet, page 2.pdf` });
    const refusals: readonly (readonly [Partial<Argument<"print.pdf">>, string])[] = [
      [{ page: "p99" }, "page-unknown-print"],
      [{ condition: "S99=on" }, "condition-control"],
      [{ faults: ["W13:tired"] }, "fault-mode"],
      [{ what: "checklist" }, "order-complaint"],
      [{ what: "table", connector: "X99" }, "connector-unknown"],
      [{ under: [{ page: "p2", jpeg: png(4, 3).toString("base64") }] }, "picture-damaged"],
    ];
    for (const [wrong, expected] of refusals) {
      expect(code(await ask(host, "print.pdf", { ...asked, ...wrong }))).toBe(expected);
    }
  });
});

describe("whatever a page sends", () => {
  const json = fc.jsonValue({ maxDepth: 6 });
  const near = fc.record(
    {
      id: fc.oneof(json, fc.string()),
      version: fc.oneof(fc.integer(), json),
      circuit: fc.oneof(json, fc.constant(sample())),
      bench: fc.oneof(fc.string(), json),
      name: fc.oneof(fc.string(), json),
      search: fc.string({ unit: "binary" }),
      text: fc.string({ unit: "binary" }),
      sample: fc.oneof(fc.string(), fc.constantFrom("__proto__", "constructor", "4-horn")),
    },
    { requiredKeys: [] },
  );

  it("is answered or refused, never thrown", async () => {
    const host = hostOn(ownFolder());
    const names = CALL_NAMES.filter((name) => name !== "nextRequest" && !name.startsWith("print."));
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...names), fc.oneof(json, near), async (name, sent) => {
        const outcome = await answer(host, name, sent);
        if (!outcome.ok) expect(outcome.refusal.code).toMatch(/^[a-z-]+$/);
      }),
      { numRuns: 400 },
    );
  });

  it("as text that is no JSON, a call that is none and a circuit with a foreign prototype are refused", async () => {
    const host = hostOn(ownFolder());
    expect(JSON.parse(await answerText(host, "start", "{"))).toMatchObject({
      ok: false,
      refusal: { code: "call-text" },
    });
    for (const name of ["__proto__", "toString", "circuits", "", "start "]) {
      expect(JSON.parse(await answerText(host, name, "{}"))).toMatchObject({ refusal: { code: "call-unknown" } });
    }
    const text = JSON.stringify({ circuit: sample() }).replace('"parts":', '"__proto__":{"a":1},"parts":');
    expect(JSON.parse(await answerText(host, "circuits.create", text))).toMatchObject({ ok: false });
  });

  it("is refused with a code that has words", () => {
    const files = [
      "answers/door.ts",
      "answers/circuits.ts",
      "answers/samples.ts",
      "store/sqlite/open.ts",
      "store/failure.ts",
    ]
      .concat(
        "store/sqlite/upgrade.ts",
        "store/sqlite/circuits.ts",
        "store/sqlite/benches.ts",
        "store/sqlite/versions.ts",
        "print/aside.ts",
        "asked.ts",
        "print/sheets.ts",
      )
      .map((file) => readFileSync(new URL(`../../electron/${file}`, import.meta.url), "utf8"));
    const codes = files.flatMap((text) =>
      [...text.matchAll(/"((?:store|circuit|bench|version|sample|call|print|connector|order|no)-[a-z-]+)"/g)].map(
        (match) => match[1]!,
      ),
    );
    expect(codes.length).toBeGreaterThan(20);
    expect(codes.filter((each) => !WORDS.some((words) => Object.hasOwn(words, each)))).toEqual([]);
  });
});
