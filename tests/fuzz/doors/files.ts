import { createHash } from "node:crypto";
import { zipSync } from "fflate";
import { type Outcome, ok } from "../../../core/base/outcome.ts";
import { problemsOf } from "../../../core/circuit/check.ts";
import type { Circuit } from "../../../core/circuit/circuit.ts";
import { sheetOf } from "../../../core/circuit/sheet.ts";
import { jobAbout } from "../../../core/diagnose/job.ts";
import { misfitsOf } from "../../../core/diagnose/jobFits.ts";
import { parseReading } from "../../../core/diagnose/readingText.ts";
import { benchFor } from "../../../core/edit/bench.ts";
import { paste } from "../../../core/edit/commands/paste.ts";
import { apply } from "../../../core/edit/edit.ts";
import { copied } from "../../../core/edit/fragment.ts";
import { liveOf } from "../../../core/live/live.ts";
import { packCircuit, unpackCircuit } from "../../../electron/pack/pack.ts";
import { pictureOf } from "../../../electron/store/pictureFile.ts";
import { formatCircuit, readCircuit } from "../../../schemas/circuit.ts";
import { type OpenedByInstructor, openForInstructor, openForLearner, readExercise } from "../../../schemas/exercise.ts";
import { fragmentText, readFragment } from "../../../schemas/fragment.ts";
import { formatJob, readJob } from "../../../schemas/job.ts";
import { markedFrom } from "../../../schemas/marked.ts";
import { png } from "../../electron/pictureFiles.ts";
import { showing } from "../../electron/showing.ts";
import { asLearner, exerciseText, handedIn } from "../../window/handedIn.ts";
import type { Door, Input } from "../door.ts";
import { bytesOf, spoiltJson } from "../mutate.ts";
import { exercises, got, hornCircuit, sampleText, smallCircuits } from "./given.ts";

const PASSPHRASE = "correct horse";
const HORN_EXERCISE = {
  sample: "4-horn",
  check: "low-horn",
  fault: "W15:open",
  title: "Horns",
  passphrase: PASSPHRASE,
} as const;

let letIn = 0;
/** Of so many that are let in one is worked with: that takes longer than reading ten. */
const WORKED_WITH = 4;

/** What is let in is worked with at once: it must be solved, judged, drawn and written out as any other circuit. */
function workedWith(circuit: Circuit): Outcome<unknown> {
  if (letIn++ % WORKED_WITH !== 0) return ok(null);
  const live = liveOf(circuit);
  problemsOf(circuit);
  for (const { id } of circuit.pages.slice(0, 2)) got(sheetOf({ circuit, page: id, look: "iec", live }));
  got(readCircuit(formatCircuit(circuit)));
  return ok(null);
}

function onward<T>(outcome: Outcome<T>, next: (value: T) => Outcome<unknown>): Outcome<unknown> {
  return outcome.ok ? next(outcome.value) : outcome;
}

/** Archives: as the program makes them, and made by hand with other things in them and the right sums. */
function archive(circuitText: string): Uint8Array {
  const bytes = Buffer.from(circuitText);
  const sum = createHash("sha256").update(bytes).digest("hex");
  return zipSync({
    "circuit.json": bytes,
    "checksums.json": Buffer.from(JSON.stringify({ "circuit.json": sum })),
  });
}

let graded: Promise<readonly OpenedByInstructor[]> | null = null;

/** The exercise that hand-ins are graded by. */
function gradedBy(): Promise<readonly OpenedByInstructor[]> {
  graded ??= (async () => {
    const text = await exerciseText(HORN_EXERCISE);
    handins = [
      await handedIn("Ada", await asLearner(text), "throw S1=pressed", "verdict W15:open"),
      await handedIn("Bo", await asLearner(text), "throw S1=pressed"),
    ];
    return [got(await openForInstructor(got(readExercise(text)), PASSPHRASE))];
  })();
  return graded;
}
let handins: readonly string[] = [];

/** The files that a person opens or drops. */
export const FILE_DOORS: readonly Door[] = [
  {
    name: "circuit file",
    kind: "json",
    seeds: async () => smallCircuits(),
    open: (input) => onward(readCircuit(input), workedWith),
    share: 10,
    mostMs: 4_000,
  },
  {
    name: "circuit file, large",
    kind: "bytes",
    seeds: async () =>
      ["1-roof-vents", "6-truck-trailer", "9-liftgate"].map((name) => sampleText(`${name}.circuit.json`)),
    open: (input) => readCircuit(input),
    share: 2,
    mostMs: 4_000,
  },
  {
    name: "packed circuit",
    kind: "bytes",
    seeds: async () => {
      const [one, other] = [got(pictureOf(png(30, 20))), got(pictureOf(png(40, 25, 90)))];
      const circuit = showing(hornCircuit(), one.picture, other.picture);
      return [got(packCircuit(circuit, [one, other])), archive(smallCircuits()[0]!), zipSync({})];
    },
    make: (lots, seeds): Input => {
      if (lots.happens(0.3)) return archive(spoiltJson(lots.oneOf(smallCircuits()), lots));
      // One or two bytes of the records that an archive is made of, which lie at its end and before each file.
      const copy = Uint8Array.from(bytesOf(lots.oneOf(seeds)));
      for (let time = 1 + lots.upTo(2); time > 0; time--) {
        const at = lots.happens(0.7) ? copy.length - 1 - lots.upTo(Math.min(250, copy.length)) : lots.upTo(60);
        if (at < copy.length) copy[at] = lots.oneOf([0, 1, 0xff, 0x7f, copy[at]! ^ (1 << lots.upTo(8))]);
      }
      return copy;
    },
    open: (input) => onward(unpackCircuit(bytesOf(input)), ({ circuit }) => workedWith(circuit)),
    share: 8,
    mostMs: 4_000,
  },
  {
    name: "job file",
    kind: "json",
    seeds: async () => {
      const circuit = hornCircuit();
      const readings = ["F1 @ : whole", "X20-1 @ S1=pressed : 11.9V"].map((text) => parseReading(circuit, text));
      const job = {
        ...jobAbout("j1"),
        vehicle: "B-AD 1",
        told: "no horn since the wash",
        when: ["wet" as const],
        complaint: "low-horn",
        observed: { "low-horn": "dead" as const },
        readings: readings.flatMap((reading) => (reading.ok ? [reading.value] : [])),
        batteryVolts: 12.5,
        verdict: null,
        done: "",
        after: [],
      };
      return [formatJob(circuit, job)];
    },
    open: (input) => onward(readJob(input), ({ job }) => ok(misfitsOf(hornCircuit(), job))),
    share: 10,
    mostMs: 2_000,
  },
  {
    name: "exercise file",
    kind: "json",
    seeds: async () => exercises(),
    open: async (input) => {
      const read = readExercise(input);
      return read.ok ? await openForLearner(read.value) : read;
    },
    share: 3,
    mostMs: 2_000,
  },
  {
    name: "hand-in file",
    kind: "json",
    seeds: async () => {
      await gradedBy();
      return handins;
    },
    open: async (input) => {
      const { grade, refusal } = await markedFrom("a.handin.json", input, await gradedBy());
      return refusal ? { ok: false, refusal } : ok(grade);
    },
    share: 4,
    mostMs: 4_000,
  },
  {
    name: "pasted parts",
    kind: "json",
    seeds: async () => [fragmentText(copied(hornCircuit(), ["S1", "K1", "F1", "B1"])), "a relay"],
    open: (input) =>
      onward(readFragment(String(input)), (fragment) => {
        const bench = benchFor(hornCircuit());
        const pasted = paste(bench, fragment, bench.circuit.pages[0]!.id, 10, 10);
        return onward(pasted, (edit) => onward(apply(bench, edit), (applied) => workedWith(applied.bench.circuit)));
      }),
    share: 5,
    mostMs: 4_000,
  },
];
