import { complaintWords } from "../../../core/diagnose/order.ts";
import { groundOf } from "../../../core/lesson/attempt.ts";
import { complaintIn, type Exercise } from "../../../core/lesson/exercise.ts";
import { suspectFor, wayTo } from "../../../core/lesson/ground.ts";
import { plantOf } from "../../../core/lesson/plant.ts";
import { rowText } from "../../../core/lesson/rowText.ts";
import { openForInstructor, openForLearner } from "../../../schemas/exercise.ts";
import { type Console, EXIT, need } from "../console.ts";
import { count } from "../rows.ts";
import { exerciseIn, type PassphraseTyped, passphraseOf } from "./given.ts";

/** `exercise open FILE`: what a learner may see; with the passphrase what is hidden, and what the planner needs to it. */
export async function openExercise(
  console: Console,
  path: string,
  typed: PassphraseTyped & { readonly json?: boolean },
): Promise<number> {
  const file = await exerciseIn(path);
  const passphrase = await passphraseOf(typed);
  if (passphrase === undefined) {
    const { exercise, id } = need(await openForLearner(file));
    console.write(
      typed.json ? `${JSON.stringify({ ...shown(exercise), id }, null, 2)}\n` : `${lines(exercise).join("\n")}\n`,
    );
    return EXIT.fine;
  }
  const { exercise, id, hidden } = need(await openForInstructor(file, passphrase));
  const planted = need(plantOf(exercise.circuit, hidden.fault));
  const ground = groundOf(exercise);
  const suspect = suspectFor(ground, planted);
  const way = suspect < 0 ? null : wayTo(ground, suspect);
  const rows = (way?.rows ?? []).map((row) => rowText(ground, row));
  if (typed.json) {
    const { seed, note } = hidden;
    const secret = { fault: planted.id, title: planted.title, seed, note, minutes: way?.minutes ?? null, way: rows };
    console.write(`${JSON.stringify({ ...shown(exercise), id, hidden: secret }, null, 2)}\n`);
    return EXIT.fine;
  }
  console.write(
    `${[
      ...lines(exercise),
      "",
      `Hidden: ${planted.title} (${planted.id})${hidden.seed === null ? "" : `, drawn by seed ${hidden.seed}`}`,
      ...(hidden.note === "" ? [] : [`Note: ${hidden.note}`]),
      ...(way ? [`The probe order needs ${way.minutes.toFixed(1)} minutes to it, trim with it:`] : []),
      ...rows.map((row, index) => `${String(index + 1).padStart(3)}  ${row}`),
    ].join("\n")}\n`,
  );
  return EXIT.fine;
}

function shown(exercise: Exercise): object {
  const { title, told, word, complaint, instruments, hints, tellsAtOnce, circuit } = exercise;
  const access = circuit.access.map(({ id, label, minutes }) => ({ id, label, minutes }));
  return { title, circuit: circuit.title, complaint, word, told, instruments, access, hints, tellsAtOnce };
}

function lines(exercise: Exercise): readonly string[] {
  const { title, told, instruments, hints, circuit } = exercise;
  const vehicle = circuit.vehicle ?? circuit.title;
  return [
    title === vehicle ? title : `${title}: ${vehicle}`,
    `Complaint: ${complaintWords(complaintIn(exercise))}${told === "" ? "" : `. "${told}"`}`,
    `Allowed: ${instruments.join(", ")}`,
    ...circuit.access.map(({ id, label, minutes }) => `Trim ${id}: ${label}, ${minutes} min`),
    hints.count === 0 ? "No hints" : `${count(hints.count, "hint")}, ${hints.minutes} min each`,
  ];
}
