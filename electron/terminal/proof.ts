import { figure } from "../../core/base/figure.ts";
import { PROOF_WORDS as WORDS } from "../../core/base/words/proof.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { foundBy } from "../../core/diagnose/found.ts";
import { type ProofRow, type ProofRun, proofRun } from "../../core/diagnose/proofRun.ts";
import { relearnText } from "../../core/diagnose/relearn.ts";
import { conditionText } from "../../core/live/condition.ts";
import { beforeText, windowText } from "../../core/paper/proofRow.ts";
import { readCircuitFile } from "../files.ts";
import { type Console, EXIT, need } from "./console.ts";
import { faultsOf } from "./given.ts";
import { aligned, count, wrapped } from "./rows.ts";
import { type SearchTyped, searchFrom } from "./search.ts";

/** `proof FILE --complaint CHECK --fault FAULT`: what parts repaired from masked. */
export async function proof(console: Console, file: string, options: SearchTyped): Promise<number> {
  const circuit = need(await readCircuitFile(file));
  const { typed, seen, known, notes } = await searchFrom(circuit, options);
  const { complaint, others } = seen;
  const { found, living } = need(foundBy(circuit, complaint, { others, ...known }, faultsOf(circuit, typed)));
  const { batteryVolts } = known;
  const run = need(proofRun({ circuit, complaint: complaint.check, found, living, batteryVolts }));
  for (const note of notes) console.complain(`${note}\n`);
  if (typed.json) console.write(`${JSON.stringify(proofJson(run), null, 2)}\n`);
  else printRun(console, circuit, run);
  return EXIT.fine;
}

function printRun(console: Console, circuit: Circuit, run: ProofRun): void {
  const width = Math.min(console.width, 110);
  const minutes = figure(run.minutes, 1);
  console.write(`${circuit.vehicle ?? circuit.title}\nComplaint: ${run.complaint.label}\nFound: ${run.found.title}\n`);
  console.write(
    `${count(run.rows.length, "reading")} under load, ${minutes} minutes, before the repair and after it\n\n`,
  );
  const titles = ["row", "red", "black", "in", "before", "after"];
  const rows = run.rows.map((row) => [String(row.step.number), ...leadsOf(row), beforeText(row), windowText(row)]);
  for (const line of aligned([titles, ...rows], [0, 4])) console.write(`${line}\n`);
  for (const { step } of run.rows) {
    console.write(`${wrapped(`${step.number}: ${step.why}`, width)}\n`);
    const trim = circuit.access.find(({ id }) => id === step.access);
    if (trim) console.write(`${wrapped(trim.label, width, "   ")}\n`);
    for (const caution of step.cautions) console.write(`${wrapped(`! ${caution}`, width, "   ", "     ")}\n`);
  }
  list(
    console,
    `${WORDS.checks}. ${WORDS.checksWords}`,
    run.checks.map(({ check, why }) => `${check.label} (${why})`),
  );
  list(
    console,
    `${WORDS.looks}. ${WORDS.looksWords}`,
    run.looks.map((number) => run.masked[number]!.title),
  );
  list(
    console,
    `${WORDS.relearn}. ${WORDS.relearnWords}`,
    run.relearn.map((each) => `${relearnText(each)} ${WORDS.source(each.source.document)}`),
  );
  console.write(
    "\nThe vehicle maker's procedure, local codes and licensed practice come first. Back-probe, do not pierce.\n",
  );
}

function leadsOf({ step }: ProofRow): readonly string[] {
  return [step.point, step.black, conditionText(step.settings[0]!.condition) || "rest"];
}

function list(console: Console, title: string, lines: readonly string[]): void {
  if (lines.length === 0) return;
  const width = Math.min(console.width, 110);
  console.write(`\n${wrapped(title, width)}\n`);
  for (const line of lines) console.write(`${wrapped(line, width, "  - ", "    ")}\n`);
}

function proofJson({ found, complaint, masked, rows, checks, looks, relearn, minutes }: ProofRun): object {
  const titlesOf = (numbers: readonly number[]) => numbers.map((number) => masked[number]!.title);
  return {
    complaint: complaint.id,
    found: found.id,
    minutes,
    masked: masked.map(({ id, title }) => ({ id, title })),
    rows: rows.map(({ step, check, before, after, tells }) => ({
      red: step.point,
      black: step.black,
      condition: step.settings[0]!.condition,
      check: check.id,
      before,
      after,
      expect: step.settings[0]!.expect,
      access: step.access,
      minutes: step.minutes,
      hands: step.hands,
      cautions: step.cautions,
      tells: titlesOf(tells),
    })),
    checks: checks.map(({ check, why, tells }) => ({ id: check.id, label: check.label, why, tells: titlesOf(tells) })),
    looks: titlesOf(looks),
    relearn: relearn.map(({ after, what, parts, source }) => ({ after, what, parts, source: source.document })),
  };
}
