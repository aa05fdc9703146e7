/** Something to reach: a ratio or a figure of one run, what it is to be, and where the run fails. */
export interface Goal {
  readonly name: string;
  readonly figure: number;
  /** Whether the goal is the least that the figure is to be, or the most. */
  readonly best: "least" | "most";
  readonly goal: number;
  /** Well off what was measured when this was written, so that only a step back is caught; free where it is left out. */
  readonly limit?: number;
}

/** Shows where goals stand, as a table and as one line of JSON; a line for each limit that is broken. */
export function judged(goals: readonly Goal[]): readonly string[] {
  const rows = goals.map(({ name, figure, best, goal, limit }) => ({
    name,
    figure: rounded(figure),
    goal: `${best === "most" ? "at most" : "at least"} ${goal}`,
    met: keeps(figure, best, goal),
    limit: limit ?? "-",
  }));
  console.table(rows);
  console.log(JSON.stringify(goals));
  return goals
    .filter(({ figure, best, limit }) => limit !== undefined && !keeps(figure, best, limit))
    .map(({ name, figure, best, limit }) => `${name}: ${rounded(figure)}, ${best} allowed is ${limit}`);
}

function keeps(figure: number, best: Goal["best"], value: number): boolean {
  return best === "most" ? figure <= value : figure >= value;
}

/** Three digits that count. */
function rounded(figure: number): number {
  return Number(figure.toPrecision(3));
}
