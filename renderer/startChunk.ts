/** What a builder tells of a module: those it imports before it runs. */
interface Told {
  getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null;
}

/**
 * Names the chunk of a module that a page starts with, and null for one that is read later: left to itself, the builder makes
 * fifty small files of what the page of the program and the page of a class start with. `starts` are their first modules, which stay
 * chunks of their own.
 */
export function startChunks(starts: Readonly<Record<string, string>>) {
  let reached: ReadonlyMap<string, ReadonlySet<string>> | null = null;
  return (id: string, told: Told): string | null => {
    reached ??= new Map(Object.entries(starts).map(([name, start]) => [name, reachedFrom(start, told)]));
    // Styles stay with the page that asks for them: in a chunk of the wall they would come over those of the program, by its side.
    if (Object.values(starts).includes(id) || id.endsWith(".css")) return null;
    const by = [...reached].flatMap(([name, modules]) => (modules.has(id) ? [name] : []));
    return by.length === 0 ? null : by.join("-and-");
  };
}

/** All modules that a module needs before it runs, and itself. */
function reachedFrom(start: string, told: Told): ReadonlySet<string> {
  const reached = new Set([start]);
  for (const id of reached) for (const each of told.getModuleInfo(id)?.importedIds ?? []) reached.add(each);
  return reached;
}
