import { describe, expect, test } from "vitest";
import { projectFiles, projectSources, type Source, targetOf, textOf } from "./sources.ts";
import { forbiddenNames, undocumented } from "./syntax.ts";

const ROOMS = ["base", "trade", "drawing", "solve", "parts", "circuit", "live", "diagnose", "lesson", "paper", "edit"];
/** What each top folder may import besides itself; samples are data and tests may import all. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  core: [],
  schemas: ["core"],
  electron: ["core", "schemas"],
  renderer: ["core", "schemas"],
  tests: ["core", "schemas", "electron", "renderer", "samples"],
};
const MOST_LINES = 400;

const sources = projectSources();
const inCore = sources.filter(({ path }) => path.startsWith("core/"));
const topOf = (path: string): string => path.split("/")[0]!;
const roomOf = (path: string): string => path.split("/")[1]!;

/** Every import between files of the project, as [from, to]. */
const imports = sources.flatMap(({ path, specifiers }) =>
  specifiers.flatMap((specifier) => {
    const target = targetOf(path, specifier);
    return target === null ? [] : [[path, target] as const];
  }),
);

/** A line for each that breaks a rule; a test expects none. */
function broken<T>(list: readonly T[], breaks: (item: T) => boolean, name: (item: T) => string): readonly string[] {
  return list.filter(breaks).map(name);
}

const arrow = ([from, to]: readonly [string, string]): string => `${from} -> ${to}`;

describe("rooms", () => {
  test("there are sources to judge", () => expect(inCore.length).toBeGreaterThan(100));

  test("every file of core lies in a known room", () => {
    expect(
      broken(
        inCore,
        ({ path }) => !ROOMS.includes(roomOf(path)),
        ({ path }) => path,
      ),
    ).toEqual([]);
  });

  test("a room of core imports itself and the rooms before it, types too", () => {
    const within = imports.filter((pair) => pair.every((path) => path.startsWith("core/")));
    const isBackward = ([from, to]: readonly [string, string]) =>
      ROOMS.indexOf(roomOf(to)) > ROOMS.indexOf(roomOf(from));
    expect(broken(within, isBackward, arrow)).toEqual([]);
  });

  test("core imports nothing from outside core, no package either", () => {
    const packages = inCore.flatMap(({ path, specifiers }) =>
      specifiers
        .filter((specifier) => targetOf(path, specifier) === null)
        .map((specifier) => [path, specifier] as const),
    );
    const outside = imports.filter(([from, to]) => from.startsWith("core/") && !to.startsWith("core/"));
    expect([...packages, ...outside].map(arrow)).toEqual([]);
  });

  test("a top folder imports only what it may", () => {
    const isForbidden = ([from, to]: readonly [string, string]) =>
      topOf(from) !== topOf(to) && !MAY_IMPORT[topOf(from)]?.includes(topOf(to));
    expect(broken(imports, isForbidden, arrow)).toEqual([]);
  });

  test("there is no TypeScript outside the five folders", () => {
    expect(
      broken(
        sources,
        ({ path }) => !(topOf(path) in MAY_IMPORT),
        ({ path }) => path,
      ),
    ).toEqual([]);
  });

  test("samples are data only", () => {
    const files = projectFiles().filter((path) => path.startsWith("samples/"));
    expect(
      broken(
        files,
        (path) => !path.endsWith(".json"),
        (path) => path,
      ),
    ).toEqual([]);
  });

  test("an import of a file carries its extension and finds it", () => {
    const files = new Set(projectFiles());
    const isLost = ([, to]: readonly [string, string]) => !files.has(to.replace(/\?\w+$/, ""));
    expect(broken(imports, isLost, arrow)).toEqual([]);
  });

  test("no file imports itself in a circle, types too", () => expect(circles(imports)).toEqual([]));
});

/** Circles of imports: each as the files that can reach one another. */
function circles(pairs: readonly (readonly [string, string])[]): readonly string[] {
  const next = Map.groupBy(pairs, ([from]) => from);
  const reachable = (from: string): ReadonlySet<string> => {
    const seen = new Set<string>();
    const front = [from];
    for (let at = front.pop(); at !== undefined; at = front.pop()) {
      for (const [, to] of next.get(at) ?? []) {
        if (seen.has(to)) continue;
        seen.add(to);
        front.push(to);
      }
    }
    return seen;
  };
  const reach = new Map([...next.keys()].map((path) => [path, reachable(path)]));
  return [...reach.keys()].filter((path) => reach.get(path)!.has(path)).toSorted();
}

describe("core is pure", () => {
  test("it has no clock, no chance, no host and no way to run text", () => {
    expect(inCore.flatMap(forbiddenNames)).toEqual([]);
  });

  test("it imports nothing while running and does not ask where it stands", () => {
    expect(
      broken(
        inCore,
        ({ isDynamic }) => isDynamic,
        ({ path }) => path,
      ),
    ).toEqual([]);
  });
});

describe("files", () => {
  test(`none has more than ${MOST_LINES} lines`, () => {
    const lines = ({ text }: Source): number => text.trimEnd().split("\n").length;
    expect(
      broken(
        sources,
        (source) => lines(source) > MOST_LINES,
        (source) => `${source.path}: ${lines(source)}`,
      ),
    ).toEqual([]);
  });

  test("every export outside tests has a doc comment", () => {
    expect(sources.filter(({ path }) => !path.startsWith("tests/")).flatMap(undocumented)).toEqual([]);
  });

  test("nothing is exported by default but where a tool insists", () => {
    const isDefault = ({ program, path }: Source): boolean =>
      !path.endsWith(".config.ts") && program.body.some(({ type }) => type === "ExportDefaultDeclaration");
    expect(broken(sources, isDefault, ({ path }) => path)).toEqual([]);
  });

  test("folders are lower case, modules camelCase, React components PascalCase", () => {
    const isOdd = ({ path }: Source): boolean => {
      const names = path.split("/");
      const file = names.pop()!;
      const shape = file.endsWith(".tsx")
        ? /^[A-Za-z][A-Za-z0-9]*(\.test)?\.tsx$/
        : /^[a-z][A-Za-z0-9]*(\.(test|spec|d|config))?\.ts$/;
      return !shape.test(file) || names.some((name) => !/^[a-z]+$/.test(name));
    };
    expect(broken(sources, isOdd, ({ path }) => path)).toEqual([]);
  });

  test("nothing speaks of the place where it was made, or of a package registry", () => {
    // Put together here, so that this file does not hold what it looks for.
    const banned = [
      "/wo" + "rk/",
      "/ho" + "me/",
      "../sha" + "red",
      "regis" + "try.",
      "npm" + "js",
      "yarn" + "pkg",
      "assis" + "tant",
    ];
    const texts = projectFiles().filter((path) => /\.(tsx?|mjs|js|json|md|css|html|ya?ml|svg)$|^\.ci\//.test(path));
    const found = texts.flatMap((path) => {
      const text = textOf(path).toLowerCase();
      return banned.filter((phrase) => text.includes(phrase)).map((phrase) => `${path}: ${phrase}`);
    });
    expect(found).toEqual([]);
  });
});
