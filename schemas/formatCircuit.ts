import type { Circuit } from "../core/circuit/circuit.ts";
import { circuitShape } from "./circuitShape.ts";

/** Longest line before an object or list is laid out over several lines, in characters. */
const LINE = 140;

/**
 * The circuit as the text of its file: fields in the schema's order, one part, wire or check a line where it is short,
 * a line break at the end. The same circuit always gives the same bytes.
 */
export function formatCircuit(circuit: Circuit): string {
  const ordered = inOrder(circuitShape, circuit) as Readonly<Record<string, unknown>>;
  const fields = Object.entries(ordered).map(([name, value]) => `  ${JSON.stringify(name)}: ${section(value)}`);
  return `{\n${fields.join(",\n")}\n}\n`;
}

/** What the order of fields is read from: the inside of a schema, of which only these are used. */
interface Inside {
  readonly type: string;
  readonly shape?: Readonly<Record<string, Shape>>;
  readonly element?: Shape;
  readonly innerType?: Shape;
  readonly valueType?: Shape;
  readonly discriminator?: string;
  readonly options?: readonly Shape[];
  readonly values?: readonly unknown[];
}
interface Shape {
  readonly def: unknown;
}

function inOrder(shape: Shape, value: unknown): unknown {
  const inside = shape.def as Inside;
  if (inside.innerType) return inOrder(inside.innerType, value);
  if (inside.element) return (value as readonly unknown[]).map((item) => inOrder(inside.element!, item));
  if (inside.valueType) return mapped(Object.entries(value as object), (_, item) => inOrder(inside.valueType!, item));
  if (inside.discriminator !== undefined) return inOrder(optionFor(inside, value), value);
  if (!inside.shape) return value;
  const written = Object.keys(inside.shape).filter((name) => (value as Record<string, unknown>)[name] !== undefined);
  return mapped(
    written.map((name) => [name, (value as Record<string, unknown>)[name]] as const),
    (name, item) => inOrder(inside.shape![name]!, item),
  );
}

/** The shape of a union that has the word by which its shapes are told apart. */
function optionFor({ discriminator = "", options = [] }: Inside, value: unknown): Shape {
  const word = (value as Readonly<Record<string, unknown>>)[discriminator];
  return options.find((option) => {
    const { values = [] } = (option.def as Inside).shape![discriminator]!.def as Inside;
    return values.includes(word);
  })!;
}

function mapped(
  entries: readonly (readonly [string, unknown])[],
  change: (name: string, item: unknown) => unknown,
): Readonly<Record<string, unknown>> {
  return Object.fromEntries(entries.map(([name, item]) => [name, change(name, item)]));
}

/** A top-level value: lists and objects always stand one entry a line, so that a change is one line in a diff. */
function section(value: unknown): string {
  return isNested(value) && size(value) > 0 ? spread(value, 2) : inline(value);
}

function isNested(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}

function size(value: object): number {
  return Object.keys(value).length;
}

/** A value that begins at this indent after a name of so many characters. */
function laid(value: unknown, indent: number, before: number): string {
  const line = inline(value);
  return !isNested(value) || size(value) === 0 || before + line.length <= LINE ? line : spread(value, indent);
}

function spread(value: object, indent: number): string {
  const inner = indent + 2;
  const margin = " ".repeat(inner);
  const lines = Array.isArray(value)
    ? value.map((item) => `${margin}${laid(item, inner, inner)}`)
    : Object.entries(value).map(([name, item]) => {
        const title = `${margin}${JSON.stringify(name)}: `;
        return `${title}${laid(item, inner, title.length)}`;
      });
  const [open, close] = Array.isArray(value) ? "[]" : "{}";
  return `${open}\n${lines.join(",\n")}\n${" ".repeat(indent)}${close}`;
}

function inline(value: unknown): string {
  if (!isNested(value)) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(inline).join(", ")}]`;
  const fields = Object.entries(value).map(([name, item]) => `${JSON.stringify(name)}: ${inline(item)}`);
  return fields.length === 0 ? "{}" : `{ ${fields.join(", ")} }`;
}
