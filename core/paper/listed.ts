import { PAPER_WORDS as WORDS } from "../base/words/paper.ts";

/** Names with a sign between them, and at the end how many more there are. */
export function listed(names: readonly string[], between = ", ", most = Number.POSITIVE_INFINITY): string {
  if (names.length <= most) return names.join(between);
  return WORDS.andMore(names.slice(0, most).join(between), names.length - most);
}

/** Row numbers in words: "row 3", "rows 1 and 2", "rows 1, 4 to 6 and 9". */
export function rowsText(numbers: readonly number[]): string {
  const spans: string[] = [];
  for (let i = 0; i < numbers.length; ) {
    let end = i;
    while (numbers[end + 1] === numbers[end]! + 1) end++;
    if (end - i >= 2) spans.push(WORDS.fromTo(numbers[i]!, numbers[end]!));
    else spans.push(...numbers.slice(i, end + 1).map(String));
    i = end + 1;
  }
  const last = spans.pop() ?? "";
  const text = spans.length === 0 ? last : `${spans.join(", ")} ${WORDS.and} ${last}`;
  return numbers.length === 1 ? WORDS.row(text) : WORDS.rows(text);
}
