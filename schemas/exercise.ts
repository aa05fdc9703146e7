import { type Outcome, ok, refuse } from "../core/base/outcome.ts";
import type { Circuit } from "../core/circuit/circuit.ts";
import { mayBeProbed } from "../core/diagnose/scope.ts";
import type { Exercise, Hidden } from "../core/lesson/exercise.ts";
import { type Vehicle, vehicleOf } from "../core/lesson/vehicle.ts";
import { circuitOf, formatCircuit } from "./circuit.ts";
import { exerciseShape, hiddenShape } from "./exerciseShape.ts";
import { refusalOf } from "./issue.ts";
import { type Json, parseJson } from "./json.ts";
import { type Key, type Sealed, seal, sha256, unsealForInstructor, unsealForProgram } from "./seal.ts";
import { textOf } from "./text.ts";

/** The version of the exercise file that this program writes. */
export const EXERCISE_VERSION = 1;
/** The format that an exercise file names. */
export const EXERCISE_FORMAT = "wirefathom/exercise";

/** What an exercise file says: what everybody may see, and the seal over the rest. */
export interface ExerciseFile {
  readonly exercise: Exercise;
  readonly seal: Sealed;
}

/** An exercise that can be worked on: its vehicle, and what its hand-ins are known and signed by. */
export interface Opened {
  readonly exercise: Exercise;
  readonly vehicle: Vehicle;
  /** SHA-256 of the open part and of what is sealed: the same for everybody who has the file. */
  readonly id: string;
  readonly handinKey: Key;
}

/** The same for the instructor, who may see what is hidden. */
export interface OpenedByInstructor extends Opened {
  readonly hidden: Hidden;
}

/**
 * Reads a `*.exercise.json`, given as text or bytes; the seal stays shut. Refuses `exercise-format`, `file-newer`, `check-unknown`,
 * `over-60-volts`, and with the path or the line whatever else is wrong in it.
 */
export function readExercise(file: string | Uint8Array): Outcome<ExerciseFile> {
  const text = textOf(file);
  if (!text.ok) return text;
  const json = parseJson(text.value);
  if (!json.ok) return json;
  const { format, version, circuit: drawn = null } = json.value as Readonly<Record<string, Json>>;
  if (format !== EXERCISE_FORMAT)
    return refuse("exercise-format", { format: typeof format === "string" ? format.slice(0, 40) : "nothing" });
  if (typeof version === "number" && version > EXERCISE_VERSION)
    return refuse("file-newer", { version, known: EXERCISE_VERSION });
  const parsed = exerciseShape.safeParse(json.value);
  if (!parsed.success) return { ok: false, refusal: refusalOf(parsed.error.issues, json.value) };
  const circuit = circuitIn(drawn);
  if (!circuit.ok) return circuit;
  const { seal, format: _, version: __, circuit: ___, ...said } = parsed.data;
  const checks = circuit.value.checks.map(({ id }) => id);
  if (!checks.includes(said.complaint))
    return refuse("check-unknown", { path: "complaint", check: said.complaint, checks: checks.join(", ") });
  return ok({ exercise: { ...said, circuit: circuit.value }, seal });
}

/** The circuit of an exercise; a refusal names its place in the exercise's file. */
function circuitIn(json: Json): Outcome<Circuit> {
  const circuit = circuitOf(typeof json === "object" && json !== null ? json : {});
  if (circuit.ok) return mayBeProbed(circuit.value);
  const { code, about } = circuit.refusal;
  return refuse(code, { ...about, path: about.path === undefined ? "circuit" : `circuit.${about.path}` });
}

/** The text of an exercise's file with its hidden part sealed. Refuses `passphrase-short`, and a circuit that no file could hold. */
export async function formatExercise(
  exercise: Exercise,
  hidden: Hidden,
  passphrase: string,
  rounds?: number,
): Promise<Outcome<string>> {
  const written = parseJson(formatCircuit(exercise.circuit));
  // As it will be read, so that the seal fits what comes out of the file.
  const circuit = written.ok ? circuitIn(written.value) : written;
  if (!circuit.ok) return circuit;
  const sent = { ...exercise, circuit: circuit.value };
  const open = await sha256(openText(sent));
  const sealed = await seal(JSON.stringify(hiddenShape.parse(hidden)), open, passphrase, rounds);
  return sealed.ok ? ok(fileText({ exercise: sent, seal: sealed.value })) : sealed;
}

/** The text of an exercise's file; what was read and not changed gives the same bytes. */
function fileText({ exercise, seal }: ExerciseFile): string {
  const { salt, rounds, forInstructor, forProgram, content } = seal;
  const sealed = JSON.stringify({ salt, rounds, forInstructor, forProgram, content }, null, 2);
  return `${openText(exercise).trimEnd().slice(0, -2)},\n  "seal": ${sealed.replaceAll("\n", "\n  ")}\n}\n`;
}

/** The open part in its one spelling: what the seal is bound to. */
function openText(exercise: Exercise): string {
  const { title, complaint, word, told, instruments, hints, tellsAtOnce, circuit } = exercise;
  const { count, minutes } = hints;
  const said = {
    format: EXERCISE_FORMAT,
    version: EXERCISE_VERSION,
    title,
    complaint,
    word,
    told,
    instruments,
    hints: { count, minutes },
    tellsAtOnce,
  };
  const drawn = formatCircuit(circuit).trimEnd().replaceAll("\n", "\n  ");
  return `${JSON.stringify(said, null, 2).slice(0, -2)},\n  "circuit": ${drawn}\n}\n`;
}

/**
 * Opens an exercise for the learner's program: the vehicle can be worked on, and nothing of what comes back shows the fault.
 * Refuses `exercise-changed`, and as `vehicleOf`.
 */
export async function openForLearner(file: ExerciseFile): Promise<Outcome<Opened>> {
  const unsealed = await unsealForProgram(file.seal, await sha256(openText(file.exercise)));
  if (!unsealed.ok) return unsealed;
  const opened = await openedWith(file, unsealed.value);
  if (!opened.ok) return opened;
  const { hidden: _, ...shown } = opened.value;
  return ok(shown);
}

/** Opens an exercise for the instructor. Refuses `passphrase-wrong`, and as `openForLearner`. */
export async function openForInstructor(file: ExerciseFile, passphrase: string): Promise<Outcome<OpenedByInstructor>> {
  const unsealed = await unsealForInstructor(file.seal, await sha256(openText(file.exercise)), passphrase);
  return unsealed.ok ? openedWith(file, unsealed.value) : unsealed;
}

async function openedWith(
  { exercise, seal }: ExerciseFile,
  { hidden: text, handinKey }: { readonly hidden: string; readonly handinKey: Key },
): Promise<Outcome<OpenedByInstructor>> {
  const hidden = hiddenIn(text);
  if (!hidden.ok) return hidden;
  const vehicle = vehicleOf(exercise, hidden.value);
  if (!vehicle.ok) return vehicle;
  const id = await exerciseId({ exercise, seal });
  return ok({ exercise, vehicle: vehicle.value, id, handinKey, hidden: hidden.value });
}

/** What an exercise is known by, the same for everybody who has its file; the seal stays shut. */
export function exerciseId({ exercise, seal }: ExerciseFile): Promise<string> {
  return sha256(openText(exercise) + seal.content);
}

/** What was sealed; refused without a word of what it says. */
function hiddenIn(text: string): Outcome<Hidden> {
  const json = parseJson(text);
  const parsed = json.ok ? hiddenShape.safeParse(json.value) : null;
  return parsed?.success ? ok(parsed.data) : refuse("exercise-version");
}

/** Whether a text is meant as an exercise file, by its own word; it may still be refused. */
export function isExerciseText(text: string): boolean {
  return /^\s*\{\s*"format"\s*:\s*"wirefathom\/exercise"/.test(text.slice(0, 400));
}
