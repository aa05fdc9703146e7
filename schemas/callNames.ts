/**
 * The names of everything a page can ask of its host. Kept apart from the schemas, since the preload of the window
 * carries this list and nothing else.
 */
export const CALL_NAMES = [
  "start",
  "nextRequest",
  "window.front",
  "class.open",
  "class.close",
  "circuits.list",
  "circuits.open",
  "circuits.close",
  "circuits.read",
  "circuits.create",
  "circuits.fromSample",
  "circuits.import",
  "circuits.save",
  "circuits.standing",
  "circuits.versions",
  "circuits.version",
  "circuits.duplicate",
  "circuits.rename",
  "circuits.remove",
  "circuits.restore",
  "circuits.exportText",
  "circuits.pack",
  "circuits.unpack",
  "pictures.put",
  "pictures.get",
  "benches.save",
  "jobs.list",
  "jobs.read",
  "jobs.remove",
  "jobs.restore",
  "attempts.list",
  "attempts.take",
  "attempts.open",
  "attempts.add",
  "attempts.restart",
  "attempts.remove",
  "attempts.restore",
  "marks.list",
  "marks.keep",
  "marks.forget",
  "samples.list",
  "samples.open",
  "samples.exercise",
  "settings.get",
  "settings.set",
  "files.save",
  "files.open",
  "print.pdf",
  "print.class",
  "export.takeHome",
  "export.svg",
  "about",
  "reports.keep",
] as const;

/** The name of a call. */
export type CallName = (typeof CALL_NAMES)[number];

/** True where the word names a call. */
export function isCallName(word: string): word is CallName {
  return (CALL_NAMES as readonly string[]).includes(word);
}
