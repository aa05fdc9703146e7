import { type ComponentType, type LazyExoticComponent, lazy } from "react";

const readers: (() => Promise<unknown>)[] = [];

/** A view that is no part of what the page starts with: read when first wanted, or ahead of that. */
function late<Props>(read: () => Promise<ComponentType<Props>>): LazyExoticComponent<ComponentType<Props>> {
  const once = async () => ({ default: await read() });
  readers.push(once);
  return lazy(once);
}

/** The bench: a circuit that is open. */
export const BenchView = late(async () => (await import("./panels/BenchView.tsx")).BenchView);
/** An exercise worked on. */
export const LearnerView = late(async () => (await import("./learner/LearnerView.tsx")).LearnerView);
/** What was handed in, opened by an instructor. */
export const HandinsView = late(async () => (await import("./instructor/HandinsView.tsx")).HandinsView);
/** What a class sees, over the whole screen. */
export const ClassHere = late(async () => (await import("./class/ClassHere.tsx")).ClassHere);
/** Files to hand on. */
export const ExportDialog = late(async () => (await import("./export/ExportDialog.tsx")).ExportDialog);
/** Sheets to print. */
export const PrintDialog = late(async () => (await import("./print/PrintDialog.tsx")).PrintDialog);
/** Printed pages brought in. */
export const BringIn = late(async () => (await import("./printed/BringIn.tsx")).BringIn);
/** Every key. */
export const KeySheet = late(async () => (await import("./keys/KeySheet.tsx")).KeySheet);
/** Help. */
export const HelpDialog = late(async () => (await import("./help/HelpDialog.tsx")).HelpDialog);
/** A report of a fault of the program. */
export const ReportDialog = late(async () => (await import("./report/ReportDialog.tsx")).ReportDialog);

/**
 * Reads all of them one after the other, so that none is waited for once the first picture stands. One that cannot be read
 * says so where it is wanted.
 */
export async function readAhead(): Promise<void> {
  for (const read of readers) await read().catch(() => {});
}
