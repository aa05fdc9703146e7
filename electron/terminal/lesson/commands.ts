import type { Command } from "commander";
import type { Console } from "../console.ts";

const several = (value: string, before: readonly string[] | undefined): readonly string[] => [...(before ?? []), value];

/** How the passphrase of an exercise is given, for every command that asks for it. */
function withPassphrase(command: Command): Command {
  return command
    .option("--passphrase <words>", "the instructor's passphrase")
    .option("--passphrase-file <file>", "file with the passphrase, which keeps it off the list of what runs");
}

/** The commands of a class: exercises, what learners did with them, and questions. */
export function addLessonCommands(program: Command, console: Console, ended: (code: number) => void): void {
  const exercise = program
    .command("exercise")
    .description("circuits with a hidden fault: make, open, work on them (each has --help)");

  exercise
    .command("faults")
    .description("the fault cupboard of a function check, easiest first")
    .argument("<file>", "circuit file")
    .option("--complaint <check>", "function check that fails")
    .option("--instruments <list>", "what may be used, with commas; without it, everything")
    .option("--json", "one JSON object")
    .action(async (file, options) => ended(await (await import("./faults.ts")).faults(console, file, options)));

  withPassphrase(
    exercise
      .command("make")
      .description("seal a fault into a file for learners")
      .argument("<file>", "circuit file")
      .requiredOption("--out <file>", "file ending in .exercise.json")
      .option("--complaint <check>", "function check that fails; by seed, any")
      .option("--fault <fault>", "the fault, chosen by hand")
      .option("--seed <number>", "or drawn: the same number, the same fault")
      .option("--difficulty <level>", "easy, medium or hard, for a drawn one")
      .option("--instruments <list>", "what may be used, with commas; without it, everything")
      .option("--access <group=minutes>", "minutes of trim in this exercise; may be given again", several)
      .option("--hints <n>", "hints allowed; without it, none")
      .option("--hint-minutes <n>", "what a hint costs")
      .option("--title <words>", "title of the exercise; without it, the circuit's")
      .option("--told <words>", "the complaint in the owner's words")
      .option("--note <words>", "a note for the instructor alone")
      .option(
        "--tell-later",
        "the learner is not told whether the verdict is right; wanted where it is graded, else a throwaway try tells the fault",
      ),
  ).action(async (file, options) => ended(await (await import("./make.ts")).make(console, file, options)));

  withPassphrase(
    exercise
      .command("open")
      .description("what an exercise says; with the passphrase, what is hidden in it too")
      .argument("<file>", "exercise file")
      .option("--json", "one JSON object"),
  ).action(async (file, options) =>
    ended(await (await import("./openExercise.ts")).openExercise(console, file, options)),
  );

  exercise
    .command("run")
    .description("work on an exercise, move by move")
    .argument("<file>", "exercise file")
    .option("--do <move>", "what is done: 'throw S1=on', 'probe S5.6 @ S1=on'; may be given again", several)
    .option("--from <file>", "hand-in to go on from")
    .option("--save <file>", "write the route to a file ending in .handin.json")
    .option("--learner <name>", "who hands in")
    .option("--json", "one JSON object")
    .action(async (file, options) => ended(await (await import("./run.ts")).run(console, file, options)));

  withPassphrase(
    program
      .command("grade")
      .description("the table of a class: verdicts, how far they are proven, minutes, wasted probes, wrong turns")
      .argument("<files...>", "hand-ins")
      .option("--exercise <file>", "exercise file that was handed in; may be given again", several)
      .option("--csv <file>", "write the table for a spreadsheet")
      .option("--pdf <file>", "write the table as sheets to be printed, in black")
      .option("--paper <name>", "a4, a3, letter or tabloid", "a4")
      .option("--tasks <file>", "a school's task list: TASK: EXERCISE; EXERCISE, one a line")
      .option("--tasks-csv <file>", "write each learner's progress with the tasks for a spreadsheet")
      .option("--json", "one JSON object"),
  ).action(async (files, options) => ended(await (await import("./grade.ts")).grade(console, files, options)));

  program
    .command("lesson")
    .description("the lessons that come with the program; of one, its scenes, questions, answers and hidden faults")
    .argument("[file]", "circuit file whose scenes are taught; without it, a list")
    .option("--json", "one JSON object")
    .action(async (file, options) => ended(await (await import("./lesson.ts")).lesson(console, file, options)));

  program
    .command("questions")
    .description("questions for a class, made from the circuit itself: predict, then reveal")
    .argument("<file>", "circuit file")
    .option("--seed <number>", "the same number, the same questions", "1")
    .option("--count <n>", "how many", "8")
    .option("--in <condition>", "ask in this condition alone")
    .option("--fault <fault>", "what is wrong, and said in the question; may be given again", several)
    .option("--json", "one JSON object")
    .action(async (file, options) => ended(await (await import("./questions.ts")).questions(console, file, options)));
}
