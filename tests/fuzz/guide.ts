import { type Profiler, Session } from "node:inspector";
import type { Input } from "./door.ts";

/** Tells which inputs lead to places in the program that none led to before. */
export interface Guide {
  /** Counts an input that was just let in; `again` lets one in once more. Comes back with those that are worth spoiling further. */
  noted(input: Input, again: (input: Input) => Promise<unknown>): Promise<readonly Input[]>;
}

/** Inputs that are looked at together: a look takes as long as some inputs do. */
const TOGETHER = 25;
const OWN = /\/(?:core|schemas|electron|renderer)\/|node_modules\/fflate\//;

/** Watches which blocks of the program's own code run in this thread, as the engine itself counts them. */
export function guide(): Guide {
  const session = new Session();
  session.connect();
  session.post("Profiler.enable");
  session.post("Profiler.startPreciseCoverage", { callCount: true, detailed: true });
  const seen = new Set<string>();
  let waiting: Input[] = [];
  /** The blocks that ran since the last look and never before. */
  const look = (): readonly string[] => {
    let found: readonly string[] = [];
    session.post("Profiler.takePreciseCoverage", (_error, taken) => {
      found = blocksIn(taken).filter((block) => !seen.has(block));
    });
    return found;
  };
  return {
    noted: async (input, again) => {
      waiting.push(input);
      if (waiting.length < TOGETHER) return [];
      const looked = waiting;
      waiting = [];
      if (look().length === 0) return [];
      const leading: Input[] = [];
      for (const each of looked) {
        await again(each);
        const found = look();
        for (const block of found) seen.add(block);
        if (found.length > 0) leading.push(each);
      }
      return leading;
    },
  };
}

function blocksIn({ result }: Profiler.TakePreciseCoverageReturnType): readonly string[] {
  const own = result.filter(({ url }) => OWN.test(url));
  const ranges = own.flatMap(({ url, functions }) =>
    functions.flatMap((each) => each.ranges.map((range) => ({ url, ...range }))),
  );
  return ranges
    .filter(({ count }) => count > 0)
    .map(({ url, startOffset, endOffset }) => `${url} ${startOffset} ${endOffset}`);
}
