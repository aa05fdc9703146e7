import type { ESTree } from "vite";
import type { Source } from "./sources.ts";

/** Names that only a host, a clock or chance gives. */
const FORBIDDEN: ReadonlySet<string> = new Set(
  `Date process console setTimeout setInterval setImmediate queueMicrotask requestAnimationFrame fetch XMLHttpRequest
  WebSocket Worker globalThis window self document navigator location localStorage performance crypto require module
  exports eval Function Buffer __dirname __filename Intl WeakRef FinalizationRegistry`.split(/\s+/),
);

/** Names that a file uses and core may not, each as `path: name`; names that the file itself declares are its own. */
export function forbiddenNames({ path, program }: Source): readonly string[] {
  const declared = new Set<string>();
  const used = new Set<string>();
  visit(program, (node, parent, key) => {
    if (isMathRandom(node)) used.add("Math.random");
    if (node.type !== "Identifier") return;
    if (isDeclaration(parent, key)) declared.add(node.name);
    else if (!isLabel(parent, key)) used.add(node.name);
  });
  const names = [...used].filter((name) => name === "Math.random" || (FORBIDDEN.has(name) && !declared.has(name)));
  return names.map((name) => `${path}: ${name}`);
}

/** Exports of a file without a doc comment, each as `path: line`. One comment serves a block of lines without a gap. */
export function undocumented({ path, text, program, comments }: Source): readonly string[] {
  const docs = comments.filter(({ type, value }) => type === "Block" && value.startsWith("*"));
  const gapBefore = (start: number, end: number): string => text.slice(end, start);
  let last: { readonly end: number; readonly isDocumented: boolean } | null = null;
  return program.body.flatMap((node) => {
    if (node.type !== "ExportNamedDeclaration" || !node.declaration) return [];
    const own = docs.some(({ end }) => end <= node.start && /^\s*$/.test(gapBefore(node.start, end)));
    const isDocumented: boolean = own || (last?.isDocumented === true && gapBefore(node.start, last.end) === "\n");
    last = { end: node.end, isDocumented };
    return isDocumented ? [] : [`${path}: ${text.slice(node.start, node.end).split("\n")[0]!}`];
  });
}

type Node = ESTree.Node;

function visit(
  node: Node,
  look: (node: Node, parent: Node | null, key: string) => void,
  parent: Node | null = null,
  key = "",
): void {
  look(node, parent, key);
  for (const [name, value] of Object.entries(node)) {
    for (const child of Array.isArray(value) ? value : [value]) {
      if (child && typeof child === "object" && "type" in child) visit(child as Node, look, node, name);
    }
  }
}

function isMathRandom(node: Node): boolean {
  return (
    node.type === "MemberExpression" &&
    node.object.type === "Identifier" &&
    node.object.name === "Math" &&
    node.property.type === "Identifier" &&
    node.property.name === "random"
  );
}

/** A name that is being given: a variable, a parameter, a function, a class, an import. */
function isDeclaration(parent: Node | null, key: string): boolean {
  switch (parent?.type) {
    case "VariableDeclarator":
    case "FunctionDeclaration":
    case "ClassDeclaration":
    case "TSTypeAliasDeclaration":
    case "TSInterfaceDeclaration":
      return key === "id" || key === "params";
    case "ArrowFunctionExpression":
    case "FunctionExpression":
      return key === "params";
    case "ImportSpecifier":
    case "CatchClause":
    case "RestElement":
      return true;
    case "Property":
      // A pattern taken apart: `const { location } = ...`; of an object made, its key alone is no use.
      return key === "value" && parent.shorthand;
    default:
      return false;
  }
}

/** A name that stands for itself: a property, a key, a label. */
function isLabel(parent: Node | null, key: string): boolean {
  switch (parent?.type) {
    case "MemberExpression":
      return key === "property" && !parent.computed;
    case "Property":
    case "PropertyDefinition":
    case "MethodDefinition":
    case "TSPropertySignature":
    case "TSMethodSignature":
      return key === "key" && !parent.computed;
    case "ExportSpecifier":
    case "TSNamedTupleMember":
    case "TSQualifiedName":
      return true;
    default:
      return false;
  }
}
