import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";

/** Most pages that are brought in at once. */
const MOST_PAGES = 40;

/** The pages that a text names, "3, 5-8", in their order and each once. Refuses `pages-typed` and `pages-many`. */
export function pagesTyped(text: string, last: number): Outcome<readonly number[]> {
  const pages = new Set<number>();
  for (const word of text.split(/[\s,;]+/).filter((each) => each !== "")) {
    const [, from, to = from] = /^(\d{1,6})(?:-(\d{1,6}))?$/.exec(word) ?? [];
    const [first, end] = [Number(from), Number(to)];
    if (from === undefined || first < 1 || end > last || first > end)
      return refuse("pages-typed", { text: word, last });
    for (let page = first; page <= end; page++) pages.add(page);
  }
  return counted([...pages].toSorted((one, other) => one - other));
}

/** The same pages where they are not too many. */
export function counted(pages: readonly number[]): Outcome<readonly number[]> {
  return pages.length > MOST_PAGES ? refuse("pages-many", { most: MOST_PAGES, count: pages.length }) : ok(pages);
}

/** Pages as a text that names them, the shortest: "3, 5-8". */
export function pagesText(pages: readonly number[]): string {
  const runs: (readonly [number, number])[] = [];
  for (const page of pages) {
    const last = runs.at(-1);
    if (last?.[1] === page - 1) runs[runs.length - 1] = [last[0], page];
    else runs.push([page, page]);
  }
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`)).join(", ");
}
