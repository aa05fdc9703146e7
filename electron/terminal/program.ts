import { Command, CommanderError } from "commander";
import { withoutSteering, withoutTurns } from "../../core/base/turning.ts";
import { BadInput, type Console, EXIT } from "./console.ts";
import { CONDITION_HELP, FAULT_HELP } from "./help.ts";
import { addLessonCommands } from "./lesson/commands.ts";
import { FOUND, HANDED_OVER, SEARCH, STANDING, WIGGLED, withOptions } from "./options.ts";

/** Runs one command line and returns its exit code: 0 fine, 1 a finding, 2 bad input. Never throws for a wrong entry. */
export async function runTerminal(words: readonly string[], raw: Console): Promise<number> {
  // Words of a circuit file, or of this very line, may hold signs that would clear a screen or hide what stands there.
  const console: Console = {
    ...raw,
    // Programs that read JSON get words as they are.
    write: (text) => raw.write(withoutSteering(words.includes("--json") ? text : withoutTurns(text))),
    complain: (text) => raw.complain(withoutSteering(text)),
  };
  let code: number = EXIT.fine;
  const ended = (result: number): void => {
    code = result;
  };
  const program = programFor(console, ended);
  try {
    if (words.length === 0) console.write(program.helpInformation());
    else await program.parseAsync([...words], { from: "user" });
    return code;
  } catch (error) {
    if (error instanceof BadInput) {
      console.complain(`${error.message}\n`);
      return EXIT.badInput;
    }
    if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.fine : EXIT.badInput;
    throw error;
  }
}

function programFor(console: Console, ended: (code: number) => void): Command {
  const program = new Command("wirefathom")
    .description("Traces a vehicle circuit: wire states and volts, what to probe next, sheets to print.")
    .exitOverride()
    .showHelpAfterError(false)
    .configureOutput({
      writeOut: (text) => console.write(text),
      writeErr: (text) => console.complain(text),
      outputError: (text, write) => write(`${asSentence(text)}\n`),
    })
    .addHelpText(
      "after",
      `\n${CONDITION_HELP}\n\n${FAULT_HELP}\n\nThe vehicle maker's procedure, local codes and licensed practice come first.`,
    );

  program
    .command("check")
    .description("problems of a circuit, and loose ends")
    .argument("<file>", "circuit file")
    .option("--json", "one JSON object")
    .action(async (file, options) => ended(await (await import("./check.ts")).check(console, file, options)));

  withOptions(program.command("live"), STANDING)
    .description("state and volts of every wire and terminal in a condition")
    .argument("<file>", "circuit file")
    .option("--json", "one JSON object")
    .action(async (file, options) => ended(await (await import("./live.ts")).live(console, file, options)));

  withOptions(program.command("why"), STANDING)
    .description("why a wire, part or point is as it is, and what would change it")
    .argument("<file>", "circuit file")
    .argument("<point>", "a point S5.6 or X5-6, a wire W13, or a part M3")
    .option("--json", "one JSON object")
    .action(async (file, point, options) => ended(await (await import("./why.ts")).why(console, file, point, options)));

  program
    .command("shares")
    .description("what else hangs on a fuse, splice, ground, connector, pin or wire, and what its opening does")
    .argument("<file>", "circuit file")
    .argument("<target>", "a fuse F7, splice SP1, ground GP2, connector X5, pin X5-6 or wire W13")
    .option("--json", "one JSON object")
    .action(async (file, target, options) =>
      ended(await (await import("./shares.ts")).shares(console, file, target, options)),
    );

  program
    .command("sneaks")
    .description("every way current can run against the drawn direction, with nothing or one place open")
    .argument("<file>", "circuit file")
    .option("--json", "one JSON object")
    .action(async (file, options) => ended(await (await import("./sneaks.ts")).sneaks(console, file, options)));

  withOptions(program.command("jumper"), STANDING)
    .description("what would flow through a jumper between two points, what melts and what it makes run")
    .argument("<file>", "circuit file")
    .argument("<from>", "a point S5.6 or X5-6, or battery+")
    .argument("<to>", "another point, or battery-")
    .option("--fuse <amps>", "rating of the jumper's own fuse; without it, a bare lead")
    .option("--json", "one JSON object")
    .action(async (file, from, to, options) =>
      ended(await (await import("./jumper.ts")).jumper(console, file, [from, to], options)),
    );

  withOptions(program.command("table"), STANDING.slice(1))
    .description("position table: what every pin of a connector reads in every position")
    .argument("<file>", "circuit file")
    .option("--connector <id>", "connector; without it, the circuit's first")
    .option("--json", "one JSON object")
    .action(async (file, options) => ended(await (await import("./table.ts")).table(console, file, options)));

  withOptions(program.command("order"), SEARCH, WIGGLED)
    .description("test points in the order to probe them")
    .argument("<file>", "circuit file")
    .option("--sheet <code>", "code of a printed sheet: then --read 7=11.9 is what was read in its row 7")
    .option("--save-job <file>", "write the job as it stands then to a file ending in .job.json")
    .option("--vehicle <plate>", "this very vehicle, for the job")
    .option("--told <words>", "the complaint in the words of whoever brought it, for the job")
    .option("--minutes <n>", "time there is")
    .option("--json", "one JSON object")
    .action(async (file, options) => ended(await (await import("./order.ts")).order(console, file, options)));

  withOptions(program.command("proof"), SEARCH, FOUND)
    .description("readings that prove a repair, before and after; checks to repeat; what must be learnt anew")
    .argument("<file>", "circuit file")
    .option("--json", "one JSON object")
    .action(async (file, options) => ended(await (await import("./proof.ts")).proof(console, file, options)));

  withOptions(program.command("print"), STANDING, SEARCH, WIGGLED, HANDED_OVER)
    .description("a sheet as PDF, SVG or HTML; for proof and handover --fault says what was found")
    .argument("<file>", "circuit file")
    .requiredOption(
      "--what <sheet>",
      "sheet, checklist, branches, wiggle (for what fails sometimes), table, straight (one load's branch), budget (its volts lost), proof (before and after) or handover (for the owner)",
    )
    .requiredOption("--out <file>", "file ending in .pdf, .svg or .html")
    .option("--page <id>", "page of the circuit, for a sheet; without it, every page")
    .option("--underlay", "printed pages pale under the drawing, for a sheet as PDF")
    .option("--load <part>", "load whose branch is followed; without it, the complaint's")
    .option("--depth <rows>", "rows that a branch sheet is deep at most")
    .option("--connector <id>", "connector, for a table")
    .option("--paper <size>", "a4 or letter", "a4")
    .option("--look <symbols>", "iec or na", "iec")
    .option("--ink <ink>", "black or colour", "black")
    .action(async (file, options) => ended(await (await import("./print.ts")).print(console, file, options)));

  withOptions(program.command("export"), STANDING)
    .description("a file to hand on: a page that works by itself, or a list")
    .argument("<file>", "circuit file")
    .requiredOption(
      "--what <file>",
      "takehome (one page of HTML with switches and scenes; of an exercise file, one to work on it), picture (PNG, by a browser that is on this computer), wires or table (CSV), or nets (text)",
    )
    .requiredOption("--out <file>", "file ending in .html, .png, .csv or .txt")
    .option("--page <id>", "page of the circuit, for a picture; without it, the first")
    .option("--look <symbols>", "iec or na, for a picture", "iec")
    .option("--dark", "a picture on dark ground")
    .option("--times <n>", "size of a picture, times that of a screen: 1, 2 or 4", "2")
    .option("--connector <id>", "connector of a table; without it, the circuit's first")
    .action(async (file, options) => ended(await (await import("./export.ts")).exportFile(console, file, options)));

  program
    .command("open")
    .description("the window: Electron, or the page in a browser where Electron cannot run")
    .argument("[file]", "circuit file")
    .option("--library <string>", "a shared library, postgres://USER@HOST/DATABASE; without it, one's own")
    .action(async (file, options) => ended(await (await import("./open.ts")).open(console, file, options)));

  addLessonCommands(program, console, ended);
  return program;
}

/** The parser's complaint as one of our sentences: capital first, full stop last. */
function asSentence(complaint: string): string {
  const plain = complaint
    .replace(/^error: /, "")
    .replace(/\s+/g, " ")
    .trim();
  const said = `${plain.charAt(0).toUpperCase()}${plain.slice(1)}${/[.?)]$/.test(plain) ? "" : "."}`.replace(
    /\)$/,
    ").",
  );
  const hint = HINTS.find(([about]) => about.test(plain))?.[1];
  return hint === undefined ? said : `${said} ${hint}`;
}

/** Where to read on, by what was complained of. */
const HINTS: readonly (readonly [RegExp, string])[] = [
  [/^unknown command/, "--help lists all commands."],
  [
    /^(?:unknown option|missing required argument|too many arguments|option .* argument missing)/,
    "--help behind the command says what it takes.",
  ],
];
