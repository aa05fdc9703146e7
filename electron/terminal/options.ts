import type { Command } from "commander";

/** An option as it is typed, and what its help says; one that may be given again is marked. */
type OptionRow = readonly [flags: string, help: string, again?: "again"];

/** Faults planted into a circuit. */
export const PLANTED: readonly OptionRow[] = [["--fault <fault>", "plant a fault; may be given again", "again"]];

/** Where a circuit stands: what differs from rest, and faults planted into it. */
export const STANDING: readonly OptionRow[] = [["--in <condition>", "what differs from rest"], ...PLANTED];

/** What a search goes by: complaint, other checks, readings, a job to go on from, and what changes the weights. */
export const SEARCH: readonly OptionRow[] = [
  ["--complaint <check>", "function check that fails, or battery-goes-flat"],
  ["--observed <check=word>", "what another check does; may be given again", "again"],
  ["--read <reading>", "what was read: RED[/BLACK] @ CONDITION : VALUE; may be given again", "again"],
  ["--battery <volts>", "volts of the battery at rest, measured"],
  ["--sleeping <milliamps>", "current expected of the sleeping vehicle, for battery-goes-flat"],
  ["--job <file>", "job file to go on from; what is typed goes over it, readings are added"],
  ["--weigh <weight>", "WHAT=TIMES: SOURCE, such as M3:seized=3: bulletin 12; may be given again", "again"],
  ["--shop <weight>", "the same for a kind, such as motor=2: own records; may be given again", "again"],
  ["--solved <file>", "job file of an earlier job on this circuit; may be given again", "again"],
];

/** What was found, where the readings do not leave one suspect. */
export const FOUND: readonly OptionRow[] = [
  ["--fault <fault>", "what was found; without it, the suspect that the readings leave", "again"],
];

/** What was found while places were moved. */
export const WIGGLED: readonly OptionRow[] = [
  ["--when <hot,wet,bumps>", "what brings on a complaint that comes and goes"],
  ["--wiggle <reading>", "PLACE : MIN..MAX while it was moved; may be given again", "again"],
];

/** What a handover page says in people's own words, and what was read after the repair. */
export const HANDED_OVER: readonly OptionRow[] = [
  ["--read-after <reading>", "what was read after it, for a handover page; may be given again", "again"],
  ["--told <words>", "what the owner told, for a handover page"],
  ["--done <words>", "what was done"],
  ["--after <words>", "how it works after the repair"],
  ["--watch <words>", "what the owner should watch for"],
  ["--vehicle <words>", "this very vehicle; a handover page without it names the circuit's"],
  ["--technician <name>", "who works on it, for the head of a sheet with rows"],
  ["--number <number>", "number of the job"],
];

/** Gives a command options of these lists, in their order. */
export function withOptions(command: Command, ...lists: readonly (readonly OptionRow[])[]): Command {
  for (const [flags, help, again] of lists.flat()) {
    if (again) command.option(flags, help, several);
    else command.option(flags, help);
  }
  return command;
}

function several(value: string, before: readonly string[] | undefined): readonly string[] {
  return [...(before ?? []), value];
}
