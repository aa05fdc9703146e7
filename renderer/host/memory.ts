import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import { problemsOf } from "../../core/circuit/check.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { isSolved, type Job } from "../../core/diagnose/job.ts";
import { questionsIn } from "../../core/lesson/scene.ts";
import type { Answer, Argument, CallName, CircuitRow, JobRow, OpenedCircuit } from "../../schemas/calls.ts";
import { readCircuit } from "../../schemas/circuit.ts";
import { formatCircuit } from "../../schemas/formatCircuit.ts";
import { reportText } from "../../schemas/mishap.ts";
import { pictureHead } from "../../schemas/pictureHead.ts";
import { FIRST_SETTINGS, type Settings } from "../../schemas/settings.ts";
import { bytesOf } from "./base64.ts";
import type { Host } from "./host.ts";
import { memoryAttempts } from "./memoryAttempts.ts";
import { memoryMarks } from "./memoryMarks.ts";

interface KeptJob {
  readonly row: JobRow;
  readonly job: Job;
}

interface Kept {
  readonly row: CircuitRow;
  readonly circuit: Circuit;
  readonly bench: string | null;
  readonly benchVersion: number;
}

type Answering = {
  readonly [N in CallName]: (argument: Argument<N>) => Outcome<Answer<N>> | Promise<Outcome<Answer<N>>>;
};

/**
 * A host that forgets all when the page goes: for tests, and for work on the page without a program behind it. It prints
 * nothing. `moment` gives the time of each edit as ISO text.
 */
export function memoryHost(samples: ReadonlyMap<string, Circuit>, moment: () => string): Host {
  const kept = new Map<string, Kept>();
  const jobs = new Map<string, KeptJob>();
  const pictures = new Map<string, Answer<"pictures.get">>();
  let settings: Settings = FIRST_SETTINGS;
  let made = 0;

  const rows = (where: "library" | "bin"): CircuitRow[] =>
    [...kept.values()].map(({ row }) => row).filter(({ removed }) => (removed !== null) === (where === "bin"));
  const create = (circuit: Circuit, bench: string | null): OpenedCircuit => {
    made += 1;
    const now = moment();
    const row = {
      ...factsOf(circuit),
      id: `c${made}`,
      version: 1,
      made: now,
      edited: now,
      opened: now,
      removed: null,
      beside: null,
    };
    const benchVersion = bench === null ? 0 : 1;
    kept.set(row.id, { row, circuit, bench, benchVersion });
    return { id: row.id, version: 1, circuit, bench, benchVersion, known: false };
  };
  const change = (id: string, next: (known: Kept) => Kept): Outcome<Kept> => {
    const known = kept.get(id);
    if (!known) return refuse("circuit-unknown");
    const changed = next(known);
    kept.set(id, changed);
    return ok(changed);
  };
  const keepJobs = (id: string, stand: readonly Job[]): void => {
    for (const job of stand) {
      const before = jobs.get(`${id} ${job.id}`);
      if (before && JSON.stringify(before.job) === JSON.stringify(job)) continue;
      const now = moment();
      const times = { made: before?.row.made ?? now, edited: now, removed: null };
      jobs.set(`${id} ${job.id}`, { job, row: { ...jobFacts(kept.get(id)!, job), ...times } });
    }
  };
  const moveJob = (place: { readonly circuit: string; readonly id: string }, removed: string | null) => {
    const key = `${place.circuit} ${place.id}`;
    const found = jobs.get(key);
    if (!found) return refuse("job-unknown");
    const row = { ...found.row, removed };
    jobs.set(key, { ...found, row });
    return ok(row);
  };
  const rowOf = (changed: Outcome<Kept>): Outcome<CircuitRow> => (changed.ok ? ok(changed.value.row) : changed);
  const save = (
    id: string,
    circuit: Circuit | null,
    stand: {
      readonly version: number;
      readonly bench: string;
      readonly benchVersion: number;
      readonly isSight?: boolean | undefined;
      readonly jobs?: readonly Job[] | undefined;
    },
  ): Outcome<Answer<"benches.save">> => {
    const found = kept.get(id);
    if (found?.row.removed !== null) return refuse("circuit-unknown");
    if (found.row.version !== stand.version) return refuse("circuit-changed-elsewhere");
    if (found.benchVersion !== stand.benchVersion) return refuse("bench-changed-elsewhere");
    const { bench, isSight = false } = stand;
    const benchVersion = isSight ? found.benchVersion : found.benchVersion + 1;
    const changed = change(id, ({ row, circuit: before }) => {
      const version = circuit ? row.version + 1 : row.version;
      const edited = moment();
      const facts = { ...factsOf(circuit ?? before), version, edited };
      return { row: { ...row, ...facts }, circuit: circuit ?? before, bench, benchVersion };
    });
    if (!changed.ok) return changed;
    keepJobs(id, stand.jobs ?? []);
    const { version, edited } = changed.value.row;
    return ok({ id, version, benchVersion, saved: edited, beside: null });
  };

  const answers: Answering = {
    start: () =>
      ok({
        version: "",
        host: "loopback",
        library: { where: "here", name: "" },
        settings,
        count: rows("library").length,
        recent: [],
        open: null,
        exercise: null,
        notices: [],
      }),
    nextRequest: () => new Promise(() => {}),
    "window.front": () => ok({}),
    "class.open": () => ok({ shown: "page" }),
    "class.close": () => ok({}),
    "circuits.list": ({ search = "", where = "library" }) => {
      const found = rows(where).filter(({ title, vehicle }) => meets(`${title} ${vehicle}`, search));
      return ok({ rows: found.sort((one, other) => other.edited.localeCompare(one.edited)), count: found.length });
    },
    "circuits.open": ({ id }) => {
      const found = kept.get(id);
      if (!found) return refuse("circuit-unknown");
      const { row, circuit, bench, benchVersion } = found;
      return ok({ id, version: row.version, circuit, bench, benchVersion, known: false });
    },
    "circuits.close": () => ok({}),
    "circuits.read": ({ id }) => {
      const found = kept.get(id);
      return found ? ok({ circuit: found.circuit, version: found.row.version }) : refuse("circuit-unknown");
    },
    "circuits.create": ({ circuit, bench = null, jobs: stand = [] }) => {
      const made = create(circuit, bench);
      keepJobs(made.id, stand);
      return ok(made);
    },
    "jobs.list": ({ search = "", where = "library", circuit = null }) => {
      const found = [...jobs.values()]
        .map(({ row }) => row)
        .filter((row) => (row.removed !== null) === (where === "bin") && (circuit === null || row.circuit === circuit))
        .filter(({ vehicle, told, complaint, title }) => meets(`${vehicle} ${told} ${complaint} ${title}`, search));
      found.sort((one, other) => +one.isSolved - +other.isSolved || other.edited.localeCompare(one.edited));
      return ok({ rows: found, count: found.length });
    },
    "jobs.read": ({ circuit, id }) => {
      const found = jobs.get(`${circuit} ${id}`);
      return found?.row.removed === null ? ok({ job: found.job }) : refuse("job-unknown");
    },
    "jobs.remove": (place) => moveJob(place, moment()),
    "jobs.restore": (place) => moveJob(place, null),
    ...memoryAttempts(moment),
    ...memoryMarks(),
    "circuits.fromSample": ({ sample }) => {
      const circuit = samples.get(sample);
      return circuit ? ok(create(circuit, null)) : refuse("sample-unknown", { sample });
    },
    "circuits.import": ({ text }) => {
      const circuit = readCircuit(text);
      return circuit.ok ? ok(create(circuit.value, null)) : circuit;
    },
    "circuits.save": ({ id, circuit, ...stand }) => save(id, circuit, stand),
    "circuits.versions": () => ok({ versions: [], besides: [] }),
    "circuits.standing": ({ id }) => {
      const found = kept.get(id);
      if (!found) return refuse("circuit-unknown");
      const { version, edited, removed } = found.row;
      return ok({ version, by: "", saved: edited, isRemoved: removed !== null });
    },
    "circuits.version": ({ version }) => refuse("version-unknown", { version }),
    "circuits.duplicate": ({ id }) => {
      const found = kept.get(id);
      if (!found) return refuse("circuit-unknown");
      const { circuit, bench } = found;
      return ok(kept.get(create({ ...circuit, title: `${circuit.title}, copy` }, bench).id)!.row);
    },
    "circuits.rename": ({ id, title }) =>
      rowOf(
        change(id, (known) => ({
          ...known,
          circuit: { ...known.circuit, title },
          row: { ...known.row, title, version: known.row.version + 1 },
        })),
      ),
    "circuits.remove": ({ id, isForGood }) => {
      const row = rowOf(change(id, (known) => ({ ...known, row: { ...known.row, removed: moment() } })));
      if (isForGood) kept.delete(id);
      return row;
    },
    "circuits.restore": ({ id }) => rowOf(change(id, (known) => ({ ...known, row: { ...known.row, removed: null } }))),
    "circuits.exportText": ({ id }) => {
      const found = kept.get(id);
      if (!found) return refuse("circuit-unknown");
      return ok({ text: formatCircuit(found.circuit), name: `${found.circuit.title}.circuit.json` });
    },
    "circuits.pack": () => refuse("not-yet", { what: "A packed circuit" }),
    "circuits.unpack": () => refuse("not-yet", { what: "A packed circuit" }),
    "pictures.put": async ({ bytes }) => {
      const file = bytesOf(bytes);
      const head = pictureHead(file);
      if (!head.ok) return head;
      const sha256 = hex(new Uint8Array(await crypto.subtle.digest("SHA-256", file)));
      const { mime, widthPx, heightPx } = head.value;
      pictures.set(sha256, { mime, bytes });
      return ok({ sha256, mime, widthPx, heightPx });
    },
    "pictures.get": ({ sha256 }) => {
      const found = pictures.get(sha256);
      return found ? ok(found) : refuse("picture-unknown");
    },
    "benches.save": ({ id, ...stand }) => save(id, null, stand),
    "samples.list": () => ok({ samples: [...samples].map(([sample, circuit]) => sampleRow(sample, circuit)) }),
    "samples.exercise": ({ exercise }) => refuse("sample-unknown", { sample: exercise }),
    "samples.open": ({ sample }) => {
      const circuit = samples.get(sample);
      return circuit ? ok({ circuit }) : refuse("sample-unknown", { sample });
    },
    "settings.get": () => ok(settings),
    "settings.set": (changed) => {
      settings = { ...settings, ...(changed as Partial<Settings>) };
      return ok(settings);
    },
    "files.save": () => ok({ done: "download" }),
    "files.open": () => ok({ done: "choose" }),
    "print.pdf": () => refuse("not-yet", { what: "PDF" }),
    "print.class": () => refuse("not-yet", { what: "PDF" }),
    "export.takeHome": () => refuse("not-yet", { what: "take-home page" }),
    "export.svg": () => refuse("not-yet", { what: "SVG" }),
    about: () => ok({ version: "", runsOn: "", library: "", reports: "" }),
    "reports.keep": (mishap) =>
      ok({ text: reportText(mishap, { version: "", runsOn: "", when: new Date(moment()) }), file: null }),
  };
  const ask = async <N extends CallName>(name: N, argument: Argument<N>): Promise<Outcome<Answer<N>>> =>
    (answers[name] as (argument: Argument<N>) => Promise<Outcome<Answer<N>>>)(argument);
  return { name: "memory", ask };
}

function hex(bytes: Uint8Array): string {
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

function countsOf({ title, vehicle = "", pages, parts, wires }: Circuit) {
  return { title, vehicle, pages: pages.length, parts: parts.length, wires: wires.length };
}

function jobFacts({ row, circuit }: Kept, job: Job): Omit<JobRow, "made" | "edited" | "removed"> {
  const { id, vehicle, told, verdict, readings } = job;
  return {
    id,
    circuit: row.id,
    title: row.title,
    version: row.version,
    vehicle,
    told,
    complaint: circuit.checks.find((check) => check.id === job.complaint)?.label ?? "",
    readings: readings.length,
    suspect: verdict?.suspect ?? null,
    share: verdict?.share ?? null,
    isSolved: isSolved(job),
  };
}

function factsOf(circuit: Circuit) {
  const found = problemsOf(circuit);
  const problems = found.filter(({ severity }) => severity === "problem").length;
  return { ...countsOf(circuit), problems, looseEnds: found.length - problems };
}

function sampleRow(sample: string, circuit: Circuit) {
  const questions = questionsIn(circuit);
  return { sample, ...countsOf(circuit), scenes: circuit.scenes.length, questions, exercises: [] };
}

function meets(words: string, search: string): boolean {
  const all = words.toLowerCase();
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => all.includes(word));
}
