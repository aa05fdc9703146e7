import type { Circuit } from "../../core/circuit/circuit.ts";
import type { Circumstance } from "../../core/diagnose/comesAndGoes.ts";
import type { Job } from "../../core/diagnose/job.ts";
import { percent } from "../../core/diagnose/progressWords.ts";
import type { JobRow } from "../../schemas/calls.ts";
import { counted } from "./figures.ts";
import { fileNameFor } from "./library.ts";

/** When a complaint shows, as it is offered. */
export const CIRCUMSTANCE_TITLES: Readonly<Record<Circumstance, string>> = {
  hot: "Hot",
  cold: "Cold",
  wet: "Wet",
  bumps: "Over bumps",
};

/** What a job is called: its vehicle; where that is not said, that it is one without. */
export function jobName({ vehicle }: Pick<Job, "vehicle">): string {
  return vehicle.trim() === "" ? "A job without a vehicle" : vehicle;
}

/** What a job is complained of, in the words of whoever brought it, else the check's. */
export function jobComplaint({ told, complaint }: Pick<JobRow, "told" | "complaint">): string {
  return told.trim() || complaint || "No complaint yet";
}

/** How far a job is: "W14:open, 97 %, done", "3 readings", "nothing read yet". */
export function jobStands({ suspect, share, isSolved, readings }: JobRow): string {
  const read = readings === 0 ? "nothing read yet" : counted(readings, "reading");
  if (suspect === null) return read;
  return `${suspect}, ${percent(share ?? 0)}${isSolved ? ", done" : ", nothing done yet"}`;
}

/** A name for the file of a job: its vehicle and its circuit. */
export function jobFileName({ vehicle }: Pick<Job, "vehicle">, { title }: Pick<Circuit, "title">): string {
  return fileNameFor({ title: `${vehicle} ${title}`.trim() }, "job.json");
}
