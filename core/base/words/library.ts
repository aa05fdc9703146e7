/** Sentences about the library of circuits, and about what a page asks of its host. */
export const LIBRARY_WORDS: Readonly<Record<string, string>> = {
  "store-locked": "The library is open in another Wirefathom. Close that one, then try again.",
  "store-read-only": "The library in {folder} may not be written. Allow it, then try again.",
  "store-unwritable": "The library in {folder} cannot be read or written: the disk reports a fault.",
  "store-no-folder": "There is no place for the library: {folder} cannot be made.",
  "store-full": "The disk is full, so the last change was not kept. Make room, then change anything to save again.",
  "store-damaged": "The library was found damaged. Start Wirefathom again: it then goes back to its newest good copy.",
  "store-closed": "Wirefathom is ending; nothing more is kept.",
  "store-newer": "The library was written by a newer Wirefathom ({newest}). Start that one; this one changes nothing.",
  "store-no-copy": "The copy of the library for today could not be made. The library itself is in order.",
  "store-put-back":
    "The folder of the library was taken away while Wirefathom ran. All of it was written anew: {folder}.",
  "circuit-unknown": "This circuit is no longer in the library.",
  "circuit-changed-elsewhere": "This circuit was changed in another window; open it again, or keep yours as a copy.",
  "bench-changed-elsewhere":
    "Its condition, ticks or faults were changed in another window; open it again, or keep yours as a copy.",
  "version-unknown": "This circuit has no version {version}.",
  "version-damaged": "Version {version} of {title} is damaged on the disk.",
  "versions-damaged": "No version of this circuit can be read any more.",
  "job-unknown": "This job is no longer in the library.",
  "job-damaged": "This job is damaged on the disk.",
  "attempt-unknown": "This exercise is no longer in the library; open its file again.",
  "attempt-damaged": "What was done on this exercise is damaged on the disk.",
  "attempt-elsewhere": "This exercise was worked on in another window; it stands here now as it was left there.",
  "sample-unknown": "There is no sample {sample}.",
  "call-unknown": "This page asks for {call}, which this Wirefathom does not do. Load the page again.",
  "call-argument": "This page asked {call} in a wrong way ({field}). Load the page again.",
  "call-text": "This page asked for something that cannot be read. Load the page again.",
  "call-too-large": "This is more than can be kept at once: {limit} MB at most.",
  "print-too-long": "The sheets took longer than {seconds} s and were given up.",
};

/** Words of the library that are no sentences. */
export const LIBRARY_NAMES = {
  copy: "copy",
  begun: "Begun",
  brought: "Brought in from a file",
  sample: "Copied from a sample",
  copied: "Copied",
  renamed: "Renamed",
  beside: "Kept beside",
} as const;
