import { figure } from "../../core/base/figure.ts";
import { refuse } from "../../core/base/outcome.ts";
import type { Ohms } from "../../core/base/units.ts";
import { EXPECTED_WORDS } from "../../core/base/words/diagnose.ts";
import { DRAIN_WORDS } from "../../core/base/words/drain.ts";
import { JOB_SENTENCES as SAY } from "../../core/base/words/job.ts";
import { SCAN_WORDS } from "../../core/base/words/scan.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { milliampsText } from "../../core/diagnose/drain.ts";
import type { Job } from "../../core/diagnose/job.ts";
import { probeOrder } from "../../core/diagnose/order.ts";
import { percent, progressWords } from "../../core/diagnose/progressWords.ts";
import { readingText } from "../../core/diagnose/readingText.ts";
import { mayBeProbed } from "../../core/diagnose/scope.ts";
import { type Expected, isBySense, type ProbeOrder, type Setting, type Step } from "../../core/diagnose/step.ts";
import { conditionText } from "../../core/live/condition.ts";
import { wiggleOf } from "../asked.ts";
import { readCircuitFile } from "../files.ts";
import { type Console, EXIT, need } from "./console.ts";
import { jobSaved } from "./job.ts";
import { count, wrapped } from "./rows.ts";
import { type SearchTyped, searchFrom } from "./search.ts";
import { printWiggle } from "./wiggle.ts";

/** Suspects that are named before the rows. */
const MOST_NAMED = 5;

/** `order FILE --complaint CHECK`: the probe order, place by place. */
export async function order(
  console: Console,
  file: string,
  options: SearchTyped & { minutes?: string },
): Promise<number> {
  const circuit = need(mayBeProbed(need(await readCircuitFile(file))));
  const { typed, seen, known, job, notes } = await searchFrom(circuit, options);
  const { complaint, others } = seen;
  const minutes = minutesOf(typed.minutes);
  const { readings, batteryVolts, weighing } = known;
  await jobSaved(console, circuit, job, typed, { seen, readings, batteryVolts });
  const result = probeOrder(circuit, complaint, {
    others,
    readings,
    batteryVolts,
    weighing,
    ...(minutes !== undefined && { minutes }),
  });
  const wiggle =
    complaint.word === "sometimes" ? need(wiggleOf(circuit, { complaint, others }, typed.when, typed.wiggle)) : null;
  if (result.suspects.length === 0) need(refuse("no-suspects"));
  if (typed.json) console.write(`${JSON.stringify({ ...orderJson(result), wiggle, notes }, null, 2)}\n`);
  else {
    for (const note of notes) console.write(`${note}\n`);
    console.write(`${circuit.vehicle ?? circuit.title}\nComplaint: ${result.complaint}\n`);
    if (job) for (const line of jobLines(job)) console.write(`${line}\n`);
    console.write(
      `${count(result.suspects.length, "suspect")}, ${result.cleared.length} cleared by what was observed; ${count(result.steps.length, "row")}, ${result.minutes.toFixed(1)} minutes at most\n`,
    );
    readings.forEach((reading, index) => {
      console.write(`Reading ${index + 1}: ${readingText(circuit, reading)}\n`);
    });
    console.write(
      `Likeliest: ${result.suspects
        .slice(0, MOST_NAMED)
        .map((suspect) => `${suspect.title} ${percent(suspect.probability)}`)
        .join(", ")}\n${progressWords(result).join("\n")}\n`,
    );
    for (const { title, notes } of result.suspects.slice(0, MOST_NAMED))
      for (const note of notes) console.write(`${title}: ${note}\n`);
    for (const line of result.before)
      console.write(`${wrapped(`! ${line}`, Math.min(console.width, 110), "", "  ")}\n`);
    if (wiggle) printWiggle(console, circuit, wiggle);
    printSteps(console, circuit, result);
    console.write(
      "\nThe vehicle maker's procedure, local codes and licensed practice come first. Back-probe, do not pierce.\n",
    );
  }
  return EXIT.fine;
}

/** Who and what a job is about, as far as it is said. */
function jobLines({ vehicle, told, verdict, done }: Job): readonly string[] {
  return [
    ...[vehicle, told].filter((words) => words !== ""),
    ...(verdict ? [SAY.verdict(verdict.suspect, percent(verdict.share))] : []),
    ...(done === "" ? [] : [SAY.done(done)]),
  ];
}

function minutesOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const minutes = Number(text);
  return Number.isFinite(minutes) && minutes > 0 ? minutes : need(refuse("minutes-number", { text }));
}

function printSteps(console: Console, circuit: Circuit, { steps, beforehand }: ProbeOrder): void {
  let place: string | null | undefined;
  const opened = new Set(beforehand);
  for (const step of steps) {
    if (step.access !== place) {
      place = step.access;
      const group = circuit.access.find((each) => each.id === place);
      const cost = group && opened.has(group.id) ? "open by now" : `${group?.minutes} min once`;
      console.write(group ? `\n${group.label}, ${cost}\n` : "\nNothing to take off\n");
      if (group) opened.add(group.id);
    }
    printStep(console, step);
  }
}

function printStep(console: Console, step: Step): void {
  const where = [step.point, step.colour ?? ""].filter((word) => word !== "").join("  ");
  const lamp = lampText(step);
  const leads = isBySense(step.instrument)
    ? step.instrument
    : step.lampTo === "black"
      ? ""
      : step.instrument === "clamp"
        ? "clamp round the wire there"
        : `red ${step.point}, black ${step.black}`;
  console.write(
    `${String(step.number).padStart(3)}  ${where}   ${leads}${lamp}   ${step.minutes.toFixed(1)} min${step.hands === 2 ? ", second person" : ""}\n`,
  );
  const sweep = step.sweepOf === null ? "" : `sweep ${step.sweepOf}: `;
  console.write(`     ${sweep}${step.settings.map((setting) => settingText(setting, step)).join("; ")}\n`);
  if (step.ohms !== null) console.write(`     ${DRAIN_WORDS.scale(milliampsText(0.001 / step.ohms))}\n`);
  const width = Math.min(console.width, 110);
  if (step.instrument === "scan tool")
    console.write(`${wrapped(`${SCAN_WORDS.ask(step.point)}. ${SCAN_WORDS.means}`, width, "     ")}\n`);
  console.write(`${wrapped(step.why, width, "     ")}\n`);
  for (const caution of step.cautions) console.write(`${wrapped(`! ${caution}`, width, "     ", "       ")}\n`);
}

function lampText({ lampTo, instrument, point, black }: Step): string {
  if (lampTo === null) return "";
  if (lampTo === "black") return `${instrument} in place of the fuse, ${point} to ${black}`;
  return lampTo === "battery -" ? `, ${instrument} ${point} to battery -` : `, ${instrument} battery + to ${point}`;
}

function settingText({ condition, position, expect }: Setting, { sweepOf, lampTo, ohms }: Step): string {
  const where = sweepOf === null ? conditionText(condition) || "rest" : position;
  const lamp = expect.lamp === null ? "" : `, lamp ${expect.lamp}`;
  if (expect.word !== null) return `${where} ${EXPECTED_WORDS[expect.word] ?? expect.word}`;
  if (lampTo === "black") return `${where}${lamp}`;
  return `${where} ${rangeOf(expect, ohms)}${lamp}`;
}

/** "11.9 – 12.7 V"; across a fuse of a sleeping vehicle the milliamps too: "0 – 0.1 mV, 13 mA at most". */
function rangeOf({ low, high, unit }: Expected, ohms: Ohms | null): string {
  const digits = unit !== "mV" || ohms !== null ? 1 : 0;
  const most = ohms === null ? "" : `, ${milliampsText(high / 1000 / ohms)} mA at most`;
  return `${figure(low, digits)} – ${figure(high, digits)} ${unit}${most}`;
}

function orderJson({
  complaint,
  steps,
  suspects,
  cleared,
  minutes,
  elsewhere,
  progress,
  expectedMinutes,
  clashes,
  before,
}: ProbeOrder): object {
  return {
    complaint,
    minutes,
    progress,
    expectedMinutes,
    elsewhere,
    clashes,
    before,
    steps: steps.map((step) => {
      const first = step.settings[0]!;
      const { point, black, connector, cavity, colour, instrument, lampTo, sweepOf, access, hands, why, cautions } =
        step;
      return {
        point,
        black,
        connector,
        cavity,
        colour,
        condition: first.condition,
        instrument,
        lampTo,
        sweepOf,
        expect: first.expect,
        settings: step.settings,
        access,
        minutes: step.minutes,
        hands,
        ohms: step.ohms,
        why,
        caution: cautions.length === 0 ? null : cautions.join(" "),
      };
    }),
    suspects: suspects.map(({ id, title, probability, notes }) => ({ id, title, probability, notes })),
    cleared: cleared.map(({ id, title, probability }) => ({ id, title, probability })),
  };
}
