import type { Plugin } from "rolldown";

/** Where the validator writes its shapes as JSON Schema, which it carries along with every shape. */
const WRITERS = /[\\/]zod[\\/]v4[\\/]core[\\/](?:to-json-schema|json-schema-processors)\.js$/;
const NAMES = /^export (?:const|function) (\w+)|^export \{ \w+ as (\w+) \}/gm;

/**
 * Leaves out of a bundle what writes shapes as JSON Schema: the program only reads by them, and a page that travels as one
 * file has no room for it. Every name stays, and does nothing.
 */
export function withoutJsonSchema(): Plugin {
  return {
    name: "without-json-schema",
    transform: {
      filter: { id: WRITERS },
      handler(code) {
        const names = [...code.matchAll(NAMES)].map(([, own, other]) => own ?? other!);
        return { code: ["const nothing = () => nothing;", ...names.map(named)].join("\n"), map: null };
      },
    },
  };
}

function named(name: string): string {
  return `export { nothing as ${name} };`;
}
