import { type ComponentType, type LazyExoticComponent, lazy } from "react";

const readers: (() => Promise<unknown>)[] = [];

/** A view that is no part of what the page starts with: read when first wanted, or ahead of that. */
function late<Props>(read: () => Promise<ComponentType<Props>>): LazyExoticComponent<ComponentType<Props>> {
  const once = async () => ({ default: await read() });
  readers.push(once);
  return lazy(once);
}

export const BenchView = late(async () => (await import("./panels/BenchView.tsx")).BenchView);
export const LearnerView = late(async () => (await import("./learner/LearnerView.tsx")).LearnerView);
export const HandinsView = late(async () => (await import("./instructor/HandinsView.tsx")).HandinsView);
export const ClassHere = late(async () => (await import("./class/ClassHere.tsx")).ClassHere);
export const ExportDialog = late(async () => (await import("./export/ExportDialog.tsx")).ExportDialog);
export const PrintDialog = late(async () => (await import("./print/PrintDialog.tsx")).PrintDialog);
export const BringIn = late(async () => (await import("./printed/BringIn.tsx")).BringIn);
export const KeySheet = late(async () => (await import("./keys/KeySheet.tsx")).KeySheet);
export const HelpDialog = late(async () => (await import("./help/HelpDialog.tsx")).HelpDialog);
export const ReportDialog = late(async () => (await import("./report/ReportDialog.tsx")).ReportDialog);

/**
 * Reads all of them one after the other, so that none is waited for once the first picture stands. One that cannot be read
 * says so where it is wanted.
 */
export async function readAhead(): Promise<void> {
  for (const read of readers) await read().catch(() => {});
}
