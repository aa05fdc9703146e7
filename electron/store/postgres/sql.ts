/** A statement with what stands for its `$1`, `$2` and so on; no value ever becomes part of the text. */
export interface Statement {
  readonly text: string;
  readonly values: readonly unknown[];
}

/** A statement written with its values in place; a statement among them becomes part of it. */
export function sql(parts: TemplateStringsArray, ...given: readonly unknown[]): Statement {
  let text = parts[0]!;
  const values: unknown[] = [];
  given.forEach((value, index) => {
    if (isStatement(value)) {
      text += renumbered(value.text, values.length);
      values.push(...value.values);
    } else {
      values.push(storable(value));
      text += `$${values.length}`;
    }
    text += parts[index + 1]!;
  });
  return { text, values };
}

function isStatement(value: unknown): value is Statement {
  return typeof value === "object" && value !== null && "text" in value && "values" in value;
}

function renumbered(text: string, by: number): string {
  return text.replace(/\$(\d+)/g, (_, number: string) => `$${Number(number) + by}`);
}

/** PostgreSQL takes every sign in a text but the one of number zero. */
function storable(value: unknown): unknown {
  return typeof value === "string" ? value.replaceAll("\u0000", "\uFFFD") : value;
}
