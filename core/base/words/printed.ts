/** Sentences for printed pages that cannot be brought in, laid down or tied as asked. */
export const PRINTED_WORDS = {
  "underlay-unknown": "There is no printed page {underlay}.",
  "underlay-locked": '"{title}" is locked; unlock it first.',
  "underlays-many": "Under one page lie {most} printed pages at most.",
  "underlay-off-page": '"{title}" would lie off the page.',
  "corners-fold": "Four corners go round a page clockwise without folding it; these do not.",
  "corners-far": "A corner lies {most} mm off the page at most.",
  "spot-off-picture": "This spot lies off the picture.",
  "look-limits": "{what} goes from {min} to {max}, not {value}.",
  "picture-pixels": "A picture has at most {most} million pixels.",
  "picture-side": "A side of a picture has at most {most} pixels.",
  "picture-bytes": "A picture has at most {most} MB.",
  "picture-empty": "The picture is empty.",
  "picture-kind": "This is {what}; a picture is a PNG, a JPEG or a WebP.",
  "picture-damaged": "The picture is damaged or was cut off.",
  "picture-unknown": "The picture of this printed page is not in the library.",
  "picture-changed": "The picture of this printed page was damaged on the disk; bring the page in again.",
  "picture-base64": "The picture did not arrive whole.",
  "pack-empty": "The file is empty.",
  "pack-none": "This is no circuit that is packed with its pictures.",
  "pack-large": "What is packed has at most {most} MB.",
  "pack-damaged": "The packed file is damaged or was cut off.",
  "pack-encrypted": "The packed file is locked with a password; unpack it and pack it without one.",
  "pack-entry": 'The packed file holds "{name}", which does not belong to a circuit.',
  "pack-twice": 'The packed file holds "{name}" twice.',
  "pack-many": "The packed file holds more than {most} files.",
  "pack-method": '"{name}" in the packed file is packed in a way that is not known.',
  "pack-size": '"{name}" in the packed file is larger than it says or than {most} MB.',
  "pack-missing": 'The packed file lacks "{name}".',
  "pack-sum": '"{name}" in the packed file was changed or damaged: its checksum is wrong.',
  "pack-picture": 'The picture of "{title}" in the packed file is not the one that the circuit describes.',
  "pack-spare": 'The packed file holds the picture "{name}", which no page shows.',
  "picture-described": "This is no description of a picture.",
  "scale-limits": "A printed page can be scaled from {min} to {max} times at once, not {value}.",
  "not-tied": "{what} is tied to no printed page.",
} as const;

/** What is said to have limits. */
export const LOOK_AMOUNTS = { opacity: "Strength", contrast: "Contrast" } as const;

/** Names of edits of printed pages, as they stand after "Undo". */
export const PRINTED_NAMES = {
  add: (title: string) => `put "${title}" under the drawing`,
  move: (title: string) => `move "${title}"`,
  turn: (title: string) => `turn "${title}"`,
  scale: (title: string) => `scale "${title}"`,
  place: (title: string) => `lay "${title}" another way`,
  straighten: (title: string) => `make "${title}" square`,
  crop: (title: string) => `crop "${title}"`,
  look: {
    opacity: (title: string) => `fade "${title}"`,
    contrast: (title: string) => `change the contrast of "${title}"`,
    whiteOut: (title: string, isOn: boolean) =>
      isOn ? `make the paper of "${title}" white` : `show the paper of "${title}"`,
    isHidden: (title: string, isOn: boolean) => (isOn ? `hide "${title}"` : `show "${title}"`),
  },
  lock: (title: string, isLocked: boolean) => (isLocked ? `lock "${title}"` : `unlock "${title}"`),
  retitle: (title: string) => `retitle printed page "${title}"`,
  remove: (title: string) => `take "${title}" away from under the drawing`,
  reorder: (title: string) => `lay "${title}" above or below others`,
  tie: (what: string, title: string) => `tie ${what} to its place on "${title}"`,
  untie: (what: string) => `untie ${what} from the printed page`,
} as const;

/** Titles of the commands for printed pages, by id. */
export const PRINTED_TITLES = {
  "add-underlay": "Put a printed page under the drawing",
  "move-underlay": "Move the printed page",
  "turn-underlay": "Turn the printed page",
  "scale-underlay": "Scale the printed page",
  "place-underlay": "Lay the printed page",
  "crop-underlay": "Crop the printed page",
  "show-underlay": "Look of the printed page",
  "lock-underlay": "Lock the printed page",
  "retitle-underlay": "Title of the printed page",
  "remove-underlay": "Remove the printed page",
  "reorder-underlay": "Order of the printed pages",
  "tie-to-print": "Tie to the printed page",
  "untie-from-print": "Untie from the printed page",
} as const;
