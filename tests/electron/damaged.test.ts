import { readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { describe, expect, it, onTestFinished } from "vitest";
import { sentence } from "../../core/base/words.ts";
import { type Job, jobAbout } from "../../core/diagnose/job.ts";
import { isDamage } from "../../electron/store/failure.ts";
import { pictureOf } from "../../electron/store/pictureFile.ts";
import { listAttempts, takeAttempt } from "../../electron/store/sqlite/attempts.ts";
import { copiesIn, makeCopy } from "../../electron/store/sqlite/backup.ts";
import { benchOf } from "../../electron/store/sqlite/benches.ts";
import { markRemoved, type Place, placeOf } from "../../electron/store/sqlite/circuits.ts";
import { listJobs } from "../../electron/store/sqlite/jobs.ts";
import { keepStore } from "../../electron/store/sqlite/keeper.ts";
import { listCircuits } from "../../electron/store/sqlite/list.ts";
import { keepMarks, listMarks } from "../../electron/store/sqlite/marks.ts";
import { readLog } from "../../electron/store/sqlite/mending/log.ts";
import { PAGE_BYTES } from "../../electron/store/sqlite/mending/readable.ts";
import { closeStore, copyOfTheDay, openStore, type Store } from "../../electron/store/sqlite/open.ts";
import { keepPicture } from "../../electron/store/sqlite/pictures.ts";
import { saveBench, saveCircuit } from "../../electron/store/sqlite/save.ts";
import { keepSettings, settingsOf } from "../../electron/store/sqlite/settings.ts";
import { circuitInVersion } from "../../electron/store/sqlite/versions.ts";
import { exerciseWith, LAMP } from "../lesson/given.ts";
import { trials } from "../long.ts";
import {
  codesOf,
  cut,
  flip,
  flipPagesOf,
  killedLibrary,
  type Lying,
  NOON,
  openedStore,
  replaceByAnother,
  titlesIn,
  workedLibrary,
} from "./damage.ts";
import { value } from "./library.ts";
import { png } from "./pictureFiles.ts";
import { sample } from "./sample.ts";

const TEXT = "not a database at all, but long enough to look at\n".repeat(400);
const JOB: Job = {
  ...jobAbout("job-1"),
  vehicle: "The van",
  when: [],
  complaint: "low-horn",
  observed: {},
  readings: [],
  batteryVolts: null,
};
const SINCE = ["Blower", "Horn later"];
const COPIED = ["Horn"];

/** What is done to the file; what comes back where a copy is there, and what without one. */
type Case = readonly [
  name: string,
  damage: (file: string) => void,
  withCopy: readonly [code: string, titles: readonly string[]],
  without: readonly [code: string, titles: readonly string[]],
];

const CASES: readonly Case[] = [
  ["that is no database", (file) => writeFileSync(file, TEXT), ["store-restored", COPIED], ["store-begun-anew", []]],
  ["of another program", replaceByAnother, ["store-restored", COPIED], ["store-begun-anew", []]],
  ["with its head overwritten", (file) => flip(file, 0, 100), ["store-mended", SINCE], ["store-read-out", SINCE]],
  [
    "with its first page overwritten",
    (file) => flip(file, 0, 4096),
    ["store-mended", SINCE],
    ["store-read-out", SINCE],
  ],
  [
    "that does not tell its tables",
    (file) => flipPagesOf(file, "sqlite_schema"),
    ["store-mended", SINCE],
    ["store-read-out", SINCE],
  ],
  [
    "with an index overwritten",
    (file) => flipPagesOf(file, "circuits_by_edit"),
    ["store-mended", SINCE],
    ["store-read-out", SINCE],
  ],
  [
    "with the words of the search overwritten",
    (file) => flipPagesOf(file, "search_idx"),
    ["store-mended", SINCE],
    ["store-read-out", SINCE],
  ],
  [
    "with the rows of its circuits overwritten",
    (file) => flipPagesOf(file, "circuits"),
    ["store-mended-partly", SINCE],
    ["store-read-out-partly", SINCE],
  ],
  [
    "with all texts of its circuits overwritten",
    (file) => flipPagesOf(file, "versions"),
    ["store-mended-partly", COPIED],
    ["store-read-out-partly", []],
  ],
  ["cut to a quarter", (file) => cut(file, 0.25), ["store-restored", COPIED], ["store-begun-anew", []]],
  ["cut in the middle of its last page", (file) => cut(file, 0.99), ["store-mended", SINCE], ["store-read-out", SINCE]],
];

describe("a library file", () => {
  it.each(CASES)(
    "%s is kept aside, and put right from its copy and from what can be read",
    async (_, damage, [code, titles]) => {
      const { folder, file } = await workedLibrary();
      damage(file);
      const damaged = readFileSync(file);
      const store = await openedStore(folder, NOON);
      expect({ codes: codesOf(store.notices), titles: titlesIn(store) }).toEqual({ codes: [code], titles });
      expect(sentence(store.notices[0]!)).not.toMatch(/[{}]/);
      expect(readFileSync(String(store.notices[0]!.about.kept)).equals(damaged)).toBe(true);
      expect(store.connection.pragma("integrity_check", { simple: true })).toBe("ok");
      closeStore(store);
      const again = await openedStore(folder, NOON);
      expect({ codes: codesOf(again.notices), titles: titlesIn(again) }).toEqual({ codes: [], titles });
    },
  );

  it.each(CASES)("%s without a good copy gives what can be read", async (_, damage, __, [code, titles]) => {
    const { folder, file } = await workedLibrary();
    for (const { path } of await copiesIn(folder)) flip(path, 0, 8192);
    damage(file);
    const store = await openedStore(folder, NOON);
    expect({ codes: codesOf(store.notices), titles: titlesIn(store) }).toEqual({ codes: [code], titles });
  });
});

/** A worked library, and since its copy all else that one holds: a bench with its job, an exercise, a mark, a setting, a picture. */
async function fullLibrary(): Promise<Lying> {
  const lying = await workedLibrary();
  const store = await openedStore(lying.folder, NOON);
  const { id } = addedBy(store, "Blower");
  value(saveBench(store, id, { version: 1, bench: "as it stands", benchVersion: 0, jobs: [JOB] }, NOON));
  const { exercise } = exerciseWith(LAMP, "W4:open", { title: "Dark lamp" });
  takeAttempt(store, { id: "a".repeat(64), text: "sealed", exercise }, NOON);
  keepMarks(store, [{ id: "m1", learner: "Ada", exercise: "Horn", isMastered: true }], NOON);
  keepSettings(store, { theme: "dark" });
  keepPicture(store, value(pictureOf(png(40, 30))), NOON);
  closeStore(store);
  return lying;
}

/** How much of a full library is there. */
function held(store: Store) {
  const blower = store.connection.prepare("SELECT key FROM circuits WHERE title = 'Blower'").pluck().get() as number;
  return {
    circuits: circuitsThatOpen(store).toSorted(),
    bench: benchOf(store, blower ?? 0),
    jobs: listJobs(store, { search: "", where: "library", circuit: null, from: 0, limit: 9 }).count,
    attempts: listAttempts(store, "library").length,
    marks: listMarks(store).length,
    theme: settingsOf(store).theme,
    pictures: store.connection.prepare("SELECT count(*) FROM pictures").pluck().get(),
  };
}

const ALL_HELD = {
  circuits: SINCE,
  bench: "as it stands",
  jobs: 1,
  attempts: 1,
  marks: 1,
  theme: "dark",
  pictures: 1,
};
/** What tells that something may be missing. */
const TELLS_OF_LOSS = /-(partly|restored|begun-anew|found-again|lost)$/;

describe("what is read out of a damaged library", () => {
  it("is jobs, benches, exercises, marks and settings too, and what is in the bin stays there", async () => {
    const { folder, file } = await fullLibrary();
    const before = await openedStore(folder, NOON);
    const blower = addedBy(before, "Blower");
    markRemoved(before, addedBy(before, "Horn later").key, NOON);
    closeStore(before);
    flipPagesOf(file, "circuits_by_edit");
    const store = await openedStore(folder, NOON);
    expect(codesOf(store.notices)).toEqual(["store-mended"]);
    expect(titlesIn(store)).toEqual(["Blower"]);
    expect(benchOf(store, addedBy(store, "Blower").key)).toBe("as it stands");
    const jobs = listJobs(store, { search: "van", where: "library", circuit: null, from: 0, limit: 9 });
    expect(jobs.rows).toMatchObject([{ id: "job-1", circuit: blower.id, vehicle: "The van", title: "Blower" }]);
    expect(listAttempts(store, "library")).toMatchObject([{ id: "a".repeat(64), title: "Dark lamp" }]);
    expect(listMarks(store)).toEqual([{ id: "m1", learner: "Ada", exercise: "Horn", isMastered: true }]);
    expect(settingsOf(store).theme).toBe("dark");
    expect(listCircuits(store, { search: "relay", where: "library", from: 0, limit: 9 }).count).toBe(1);
  });

  it("is not believed where its bytes changed: the version before it is, and the person is told of which", async () => {
    const { folder, file } = await workedLibrary();
    const before = await openedStore(folder, NOON);
    const { id, key } = addedBy(before, "Horn later");
    value(saveCircuit(before, id, { version: 2, circuit: sample("Horn latest"), name: "Rename" }, NOON));
    const text = before.connection.prepare("SELECT text FROM versions WHERE circuit = ? AND version = 3").pluck();
    const bytes = text.get(key) as Buffer;
    closeStore(before);
    const at = readFileSync(file).indexOf(bytes.subarray(-30));
    expect(at).toBeGreaterThan(0);
    flip(file, at + 20, 1);
    flipPagesOf(file, "circuits_by_edit");
    const store = await openedStore(folder, NOON);
    expect(codesOf(store.notices)).toEqual(["store-mended-partly"]);
    expect(sentence(store.notices[0]!)).toContain("Horn later");
    expect(titlesIn(store)).toEqual(["Blower", "Horn later"]);
  });

  it("is not what a row says in a library that does not tell its columns rightly any more", async () => {
    const { folder, file } = await fullLibrary();
    const good = readFileSync(file);
    const end = good.indexOf("removed TEXT\n, beside");
    const begin = good.lastIndexOf("its bench", end);
    expect(begin).toBeGreaterThan(0);
    for (let at = begin; at < end; at += 4) {
      writeFileSync(file, good);
      flip(file, at, 5);
      const store = await openedStore(folder, NOON);
      if (!codesOf(store.notices).some((code) => TELLS_OF_LOSS.test(code)))
        expect(held(store), `${at - begin} bytes on`).toEqual(ALL_HELD);
      closeStore(store);
    }
  });

  it("is all that a copy has and more, or is told of, wherever bytes are flipped", async () => {
    const { folder, file } = await fullLibrary();
    const good = readFileSync(file);
    let whole = 0;
    let mended = 0;
    const place = fc.tuple(fc.nat(good.length - 1), fc.integer({ min: 1, max: 3_000 }));
    await fc.assert(
      fc.asyncProperty(fc.array(place, { minLength: 1, maxLength: 4 }), async (places) => {
        for (const part of ["-wal", "-shm", ".suspect"]) rmSync(file + part, { force: true });
        writeFileSync(file, good);
        for (const [at, length] of places) flip(file, at, length);
        const store = value(await openStore(folder, NOON));
        try {
          const codes = codesOf(store.notices);
          if (codes.length > 0) mended += 1;
          expect(store.connection.pragma("quick_check", { simple: true })).toBe("ok");
          const now = held(store);
          if (codes.length === 0) return;
          // At most the last edits are missing, and they are told of.
          expect(now.circuits.some((title) => title.startsWith("Horn"))).toBe(true);
          if (!codes.some((code) => TELLS_OF_LOSS.test(code))) expect(now).toEqual(ALL_HELD);
          if (isDeepStrictEqual(now, ALL_HELD)) whole += 1;
        } catch (error) {
          // An index may disagree with its table, which only a read finds: it is told as damage then.
          if (!isDamage(error)) throw error;
        } finally {
          closeStore(store);
        }
      }),
      { numRuns: trials(25, 400), seed: 20_260_302 },
    );
    expect(mended).toBeGreaterThan(8);
    // Most of what is flipped leaves everything that was drawn to be read.
    expect(whole / mended).toBeGreaterThan(0.3);
    console.log(`flipped: ${mended} put right, of those ${whole} with nothing missing`);
  });
});

describe("a log of the newest edits", () => {
  it("that is whole needs nothing, however the program was killed", async () => {
    const { folder } = await killedLibrary(4);
    const store = await openedStore(folder, NOON);
    expect({ codes: codesOf(store.notices), titles: titlesIn(store) }).toEqual({
      codes: [],
      titles: ["Blower", "Edit 4"],
    });
  });

  it.each([
    ["in its head", () => 3],
    ["in its first frame", () => 32 + 24 + 100],
    ["in the number of a frame's checksum", () => 32 + 17],
    ["in the middle", (bytes: number) => bytes >> 1],
  ])("flipped %s is read all the same where it can be, and the person told", async (_, at) => {
    const { folder, file } = await killedLibrary(4);
    const log = `${file}-wal`;
    flip(log, at(readFileSync(log).length), 1);
    const store = await openedStore(folder, NOON);
    expect(["store-edits-read", "store-edits-partly"]).toContain(codesOf(store.notices)[0]);
    expect(titlesIn(store)).toEqual(["Blower", expect.stringMatching(/^Edit [34]$/)]);
    expect(store.connection.pragma("integrity_check", { simple: true })).toBe("ok");
  });

  it("cut off in its last commit, as by a power cut, is no damage", async () => {
    const { folder, file } = await killedLibrary(4);
    const { frames } = readLog(file, PAGE_BYTES)!;
    // The last frame of the last commit, whatever of an older time lies behind it.
    writeFileSync(
      `${file}-wal`,
      readFileSync(`${file}-wal`).subarray(0, 32 + frames.length * (24 + PAGE_BYTES) - 2_000),
    );
    const store = await openedStore(folder, NOON);
    expect({ codes: codesOf(store.notices), titles: titlesIn(store) }).toEqual({
      codes: [],
      titles: ["Blower", "Edit 3"],
    });
  });
});

describe("putting a library right", () => {
  it("passes over a copy that is damaged too", async () => {
    const { folder, file } = await workedLibrary();
    const store = await openedStore(folder, NOON);
    const { path } = await makeCopy(store.connection, folder, new Date("2026-03-03T08:00:00Z"), "day");
    closeStore(store);
    flip(path, 4096, 4096);
    writeFileSync(file, TEXT);
    expect(titlesIn(await openedStore(folder, NOON))).toEqual(COPIED);
  });

  it.each(["gone", "emptied"])("brings one back from its copy that is %s altogether", async (how) => {
    const { folder, file } = await workedLibrary();
    writeFileSync(file, "");
    if (how === "gone") rmSync(file);
    const store = await openedStore(folder, NOON);
    expect({ codes: codesOf(store.notices), titles: titlesIn(store) }).toEqual({
      codes: ["store-found-again"],
      titles: COPIED,
    });
  });

  it("makes a copy of what it put right, and is gone on with where the program was ended just before its end", async () => {
    const { folder, file } = await workedLibrary();
    writeFileSync(file, TEXT);
    const store = await openedStore(folder, NOON);
    expect(await copyOfTheDay(store, NOON)).toBeNull();
    closeStore(store);
    expect((await copiesIn(folder))[0]!.path).toMatch(/put-right\.db$/);
    renameSync(file, `${file}.mended`);
    expect(titlesIn(await openedStore(folder, NOON))).toEqual(COPIED);
  });

  it("follows at the next start where damage is met while the library is open", async () => {
    const { folder, file } = await workedLibrary();
    flipPagesOf(file, "search_data");
    const keeper = keepStore(folder, () => NOON);
    const library = value(await keeper.library());
    const asked = { search: "horn", where: "library", from: 0, limit: 9 } as const;
    const refused = await library.circuits.list(asked);
    await keeper.close();
    // The short check at a start either finds it or it is tripped over.
    const next = keepStore(folder, () => NOON);
    onTestFinished(() => next.close());
    expect(value(await value(await next.library()).circuits.list(asked)).rows.map(({ title }) => title)).toEqual([
      "Horn later",
    ]);
    if (!refused.ok) expect(refused.refusal.code).toBe("store-damaged");
  });
});

function addedBy(store: Store, title: string): Place {
  const id = store.connection.prepare("SELECT id FROM circuits WHERE title = ?").pluck().get(title) as string;
  return value(placeOf(store, id));
}

/** Titles of the circuits that open in their newest version; those whose text changed on the disk do not. */
function circuitsThatOpen(store: Store): readonly string[] {
  const rows = store.connection.prepare("SELECT key, version FROM circuits WHERE removed IS NULL").all();
  return (rows as { key: number; version: number }[]).flatMap(({ key, version }) => {
    const read = circuitInVersion(store, key, version);
    return read.ok ? [read.value.title] : [];
  });
}
