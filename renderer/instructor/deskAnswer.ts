import { assert, type Outcome, ok } from "../../core/base/outcome.ts";
import { partOfPoint } from "../../core/circuit/points.ts";
import { complaintWords } from "../../core/diagnose/order.ts";
import { groundOf } from "../../core/lesson/attempt.ts";
import { failsWith, type Heard } from "../../core/lesson/cupboard.ts";
import { gradedFaults } from "../../core/lesson/difficulty.ts";
import { complaintIn, type Exercise, exerciseFor } from "../../core/lesson/exercise.ts";
import { alikeTo, suspectFor, wayTo } from "../../core/lesson/ground.ts";
import { plantOf } from "../../core/lesson/plant.ts";
import { type RouteStep, routeSteps } from "../../core/lesson/routeStep.ts";
import { rowText } from "../../core/lesson/rowText.ts";
import { formatExercise, type OpenedByInstructor, readExercise } from "../../schemas/exercise.ts";
import { type MarkedRoute, markedFrom, openOneOf } from "../../schemas/marked.ts";
import type { DeskAnswers, DeskQuestion, ExerciseSeen, Fails, HandinMarked } from "./deskQuestion.ts";
import { routePicture } from "./routePicture.ts";

type Asked<Kind extends DeskQuestion["ask"]> = Extract<DeskQuestion, { ask: Kind }>;

/** What the instructor's worker holds between questions: exercises that were opened, and routes that were made again. */
export interface OnDesk {
  readonly exercises: Map<string, OpenedByInstructor>;
  readonly routes: Map<string, NonNullable<MarkedRoute["route"]>>;
}

/** A desk with nothing on it. */
export function emptyDesk(): OnDesk {
  return { exercises: new Map(), routes: new Map() };
}

/** Answers a question of the instructor's desk; what takes long tells how far it is. */
export async function deskAnswer(
  desk: OnDesk,
  question: DeskQuestion,
  heard: Heard,
): Promise<DeskAnswers[DeskQuestion["ask"]]> {
  switch (question.ask) {
    case "grade":
      return graded(question, heard);
    case "fails":
      return failing(question);
    case "make":
      return made(question);
    case "open":
      return opened(desk, question);
    case "mark":
      return marked(desk, question);
    case "shut":
      desk.exercises.delete(question.id);
      return null;
    case "picture": {
      const route = desk.routes.get(question.handin);
      assert(route, "a route is shown that was made again");
      return routePicture(route, question);
    }
  }
}

function graded({ circuit, check, instruments }: Asked<"grade">, heard: Heard): DeskAnswers["grade"] {
  const found = circuit.checks.find(({ id }) => id === check);
  return found ? gradedFaults(circuit, found, instruments, heard) : [];
}

function failing({ circuit, fault }: Asked<"fails">): readonly Fails[] {
  const planted = plantOf(circuit, fault);
  if (!planted.ok) return [];
  return failsWith(circuit, planted.value.faults).map(({ check, word }) => ({ check: check.id, word }));
}

async function made({ circuit, wanted }: Asked<"make">): Promise<DeskAnswers["make"]> {
  const fault = plantOf(circuit, wanted.fault);
  if (!fault.ok) return fault;
  const check = circuit.checks.find(({ id }) => id === wanted.check);
  assert(check, "an exercise is made of a check of its circuit");
  const exercise = exerciseFor(circuit, { ...wanted.choice, check, fault: fault.value });
  if (!exercise.ok) return exercise;
  const hidden = { ...wanted.hidden, fault: fault.value.id };
  const text = await formatExercise(exercise.value, hidden, wanted.passphrase);
  if (!text.ok) return text;
  const ground = groundOf(exercise.value);
  const alike = alikeTo(ground, suspectFor(ground, fault.value)).map((each) => ground.suspects[each]!.title);
  return ok({ text: text.value, alike });
}

async function opened(desk: OnDesk, { text, passphrase }: Asked<"open">): Promise<Outcome<ExerciseSeen>> {
  const file = readExercise(text);
  if (!file.ok) return file;
  const exercise = await openOneOf(file.value, passphrase);
  if (!exercise.ok) return exercise;
  desk.exercises.set(exercise.value.id, exercise.value);
  return ok(seenOf(exercise.value));
}

function seenOf({ exercise, hidden, id }: OpenedByInstructor): ExerciseSeen {
  const planted = plantOf(exercise.circuit, hidden.fault);
  assert(planted.ok, "the hidden fault was planted when the exercise was opened");
  const ground = groundOf(exercise);
  const suspect = suspectFor(ground, planted.value);
  const way = suspect < 0 ? null : wayTo(ground, suspect);
  return {
    id,
    title: exercise.title,
    complaint: complaintWords(complaintIn(exercise)),
    fault: planted.value.title,
    seed: hidden.seed,
    note: hidden.note,
    minutes: way?.minutes ?? null,
    way: (way?.rows ?? []).map((row) => rowText(ground, row)),
  };
}

async function marked({ exercises, routes }: OnDesk, { name, text }: Asked<"mark">): Promise<HandinMarked> {
  const { route, ...about } = await markedFrom(name, text, [...exercises.values()]);
  if (!route || about.id === null) return { ...about, steps: [], pages: [], pageOf: [] };
  routes.set(about.id, route);
  const { exercise } = route.opened;
  const steps = routeSteps(route.replay);
  return {
    ...about,
    steps,
    pages: exercise.circuit.pages.map(({ id, title }) => ({ id, title })),
    pageOf: pagesOf(exercise, steps),
  };
}

/** The page on which each step is seen: where the leads are, else where the step before was; at first that of the complaint's load. */
function pagesOf({ circuit, complaint }: Exercise, steps: readonly RouteStep[]): readonly string[] {
  const pageOf = (part: string | undefined): string | undefined =>
    part === undefined ? undefined : circuit.placement.parts[part]?.page;
  const load = circuit.checks.find(({ id }) => id === complaint)?.load;
  const pages = [pageOf(load) ?? circuit.pages[0]?.id ?? ""];
  for (const { leads } of steps) {
    const here = leads.map((lead) => pageOf(partOfPoint(circuit, lead)?.part.id ?? lead)).find(Boolean);
    pages.push(here ?? pages.at(-1)!);
  }
  return pages;
}
