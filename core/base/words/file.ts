/** Sentences about files that cannot be read as what they should be. */
export const FILE_WORDS = {
  "file-too-large": "The file is larger than {limit} MB; a circuit is far smaller.",
  "file-not-text": "This is {what}, not a circuit file.",
  "file-empty": "The file is empty.",
  "file-not-json": "This is not a circuit file: it begins with {first} where a circuit begins with an opening brace.",
  "file-json": "{found} does not belong here; the file is damaged or was cut off.",
  "file-name-twice": '"{name}" stands twice in the same place; one of the two would be lost.',
  "file-name": '"{name}" cannot be used as a name.',
  "file-too-deep": "Lists within lists go deeper than {limit}.",
  "file-format": 'This is not a circuit file: where one says "wirefathom/circuit" as its format, it says {format}.',
  "file-newer": "The file was written by a newer program (version {version}); this one reads up to version {known}.",
  "file-field-unknown": 'The field "{field}" is not known.',
  "file-field-missing": 'The field "{field}" is missing.',
  "file-type": "Wanted here: {expected}, not {found}.",
  "file-choice": "{value} is none of {choices}.",
  "file-limit": "Allowed here: {side} {limit}, not {value}.",
} as const;
