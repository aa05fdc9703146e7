/** Sentences about a library that was found damaged or missing, or that another has open, and what came of it. */
export const DAMAGE_WORDS: Readonly<Record<string, string>> = {
  "store-restored":
    "The library was damaged, and nothing could be read from it. Its copy of {time} is open; what was changed after that is missing. The damaged file is kept: {kept}.",
  "store-mended":
    "The library was damaged. It was put right from its copy of {time} and from what could still be read: nothing is known to be missing. The damaged file is kept: {kept}.",
  "store-mended-partly":
    "The library was damaged. It was put right from its copy of {time} and from what could still be read. Missing, or as it was then: {missing}. The damaged file is kept: {kept}.",
  "store-read-out":
    "The library was damaged and had no good copy. All that it told of could still be read and is here. The damaged file is kept: {kept}.",
  "store-read-out-partly":
    "The library was damaged and had no good copy. What could still be read is here; the rest is missing, of: {missing}. The damaged file is kept: {kept}.",
  "store-begun-anew":
    "The library was damaged and had no good copy, so an empty one is open. The damaged file is kept: {kept}.",
  "store-found-again":
    "The library was missing, so its copy of {time} is open; what was changed after that is missing.",
  "store-edits-read":
    "The newest edits in the library were damaged on the disk, but could all be read. The damaged files are kept: {kept}.",
  "store-edits-partly":
    "The newest edits in the library were damaged on the disk. Missing are the last changes to: {missing}. The damaged files are kept: {kept}.",
  "store-looked-at":
    "Another Wirefathom has this library open, so it can only be read here: what you change is not kept. Work there, or close it and go on here; or save a copy to a file.",
  "store-own-again": "The other Wirefathom was closed: what you change here is kept again.",
  "store-edits-lost":
    "The newest edits in the library were damaged on the disk and are missing. The damaged files are kept: {kept}.",
};

/** Titles that are named before the rest is only counted. */
const MOST_NAMED = 5;

const LOSSY = {
  circuits: "circuits begun since, if there were any",
  jobs: "some jobs",
  pictures: "some pictures",
  attempts: "some exercises",
  marks: "some marks of learners",
  settings: "some settings",
} as const;

/** What is missing as a list in words: circuits by their titles, five at most, and what else some was lost of. Empty where nothing is. */
export function missingWords(behind: readonly string[], lossy: readonly (keyof typeof LOSSY)[]): string {
  const titles = behind.map((title) => title || "a circuit without a title");
  const more = titles.length - MOST_NAMED;
  return [
    ...titles.slice(0, MOST_NAMED),
    ...(more > 0 ? [`${more} more circuits`] : []),
    ...lossy.map((kind) => LOSSY[kind]),
  ].join("; ");
}
