import { readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { type ESTree, parseSync } from "vite";

const ROOT = fileURLToPath(new URL("..", import.meta.url));
const SKIPPED: ReadonlySet<string> = new Set([".git", "node_modules", "out"]);

/** A file of TypeScript, parsed. */
export interface Source {
  /** From the root, with slashes: `core/solve/laws.ts`. */
  readonly path: string;
  readonly text: string;
  readonly program: ESTree.Program;
  readonly comments: readonly {
    readonly type: string;
    readonly value: string;
    readonly start: number;
    readonly end: number;
  }[];
  /** What it imports or exports from elsewhere, types too, as written. */
  readonly specifiers: readonly string[];
  /** It imports while running, or asks where it stands. */
  readonly isDynamic: boolean;
}

/** Paths of every file of the project, from the root, with slashes. */
export function projectFiles(): readonly string[] {
  const walk = (folder: string): readonly string[] =>
    readdirSync(folder)
      .filter((name) => !SKIPPED.has(name))
      .flatMap((name) => {
        const path = join(folder, name);
        return statSync(path).isDirectory() ? walk(path) : [relative(ROOT, path).split(sep).join("/")];
      });
  return walk(ROOT).toSorted();
}

/** The text of a file of the project. */
export function textOf(path: string): string {
  return readFileSync(join(ROOT, path), "utf8");
}

/** Every file of TypeScript in the project, parsed; throws where one cannot be. */
export function projectSources(): readonly Source[] {
  return projectFiles()
    .filter((path) => /\.tsx?$/.test(path))
    .map((path) => {
      const text = textOf(path);
      const { program, comments, module, errors } = parseSync(path, text);
      if (errors.length > 0) throw new Error(`${path}: ${errors[0]!.message}`);
      const from = module.staticExports.flatMap(({ entries }) =>
        entries.flatMap(({ moduleRequest }) => moduleRequest?.value ?? []),
      );
      return {
        path,
        text,
        program,
        comments,
        specifiers: [...new Set([...module.staticImports.map(({ moduleRequest }) => moduleRequest.value), ...from])],
        isDynamic: module.dynamicImports.length > 0 || module.importMetas.length > 0,
      };
    });
}

/** The path that a relative specifier means, or null for a package. */
export function targetOf(path: string, specifier: string): string | null {
  return specifier.startsWith(".") ? join(dirname(path), specifier).split(sep).join("/") : null;
}
