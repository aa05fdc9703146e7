import { type ComponentType, type LazyExoticComponent, lazy } from "react";

const readers: (() => Promise<unknown>)[] = [];

/** A view that is no part of what the page starts with: read when first wanted, or ahead of that. */
function late<Props>(read: () => Promise<ComponentType<Props>>): LazyExoticComponent<ComponentType<Props>> {
  const once = async () => ({ default: await read() });
  readers.push(once);
  return lazy(once);
}

/** A circuit that is open, with all that may lie over it: what a key opens there is not waited for. */
export const OpenCircuit = late(async () => (await import("./panels/OpenCircuit.tsx")).OpenCircuit);
/** An exercise worked on. */
export const LearnerView = late(async () => (await import("./learner/LearnerView.tsx")).LearnerView);
/** What was handed in, opened by an instructor. */
export const HandinsView = late(async () => (await import("./instructor/HandinsView.tsx")).HandinsView);
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
