/** Names that Windows keeps for devices. */
const DEVICES = /^(con|prn|aux|nul|com\d|lpt\d)$/i;
const LONGEST = 80;

/** A name for a file that every system takes, made from a title: `Roof vents.circuit.json`. */
export function fileNameOf(title: string, ending: string): string {
  const cleaned = title
    .normalize("NFC")
    // biome-ignore lint/suspicious/noControlCharactersInRegex: a file name must not hold them
    .replace(/[/\\:*?"<>|\u0000-\u001f\u007f\u200e\u200f\u202a-\u202e\u2066-\u2069]+/g, " ")
    .replace(/\s+/g, " ");
  // Cut between signs: half of one would be no text.
  const plain = [...cleaned.toWellFormed()]
    .slice(0, LONGEST)
    .join("")
    .replace(/^[ .]+|[ .]+$/g, "");
  const name = plain === "" || DEVICES.test(plain) ? `${plain} circuit`.trim() : plain;
  return `${name}.${ending}`;
}
