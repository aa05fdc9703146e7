/** Letters that are written from the right, and signs that turn what is written about. */
const TURNS =
  /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;

/** A text that turns the writing about, in a span that keeps it to itself; any other as it is. For titles, which have no elements. */
export function ownSpan(text: string): string {
  const [first, pop] = ["\u2068", "\u2069"];
  // A sign in it that ends such a span would end this one.
  return TURNS.test(text) ? `${first}${text.replace(/[\u2066-\u2069]/g, "")}${pop}` : text;
}

/** A text without the signs that only turn the writing about. */
export function withoutTurns(text: string): string {
  return text.replace(/[\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, "");
}

/** A text without signs that steer a terminal: of those that print nothing, only breaks and tabs are left. */
export function withoutSteering(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: those are what is left out
  return text.replace(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f]/g, "");
}
