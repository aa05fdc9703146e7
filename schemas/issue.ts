import type { z } from "zod";
import { type Refusal, refuse } from "../core/base/outcome.ts";
import type { Json } from "./json.ts";

type Issue = z.core.$ZodIssue;
type Path = readonly PropertyKey[];

/** The first of a schema's complaints as a refusal with its path, such as `parts[3].settings.amps`. */
export function refusalOf(issues: readonly Issue[], file: Json): Refusal {
  const issue = issues[0]!;
  const path = pathText(issue.path);
  const value = valueAt(file, issue.path);
  switch (issue.code) {
    case "unrecognized_keys":
      return refuse("file-field-unknown", { path: path || "the file", field: issue.keys[0]! }).refusal;
    case "invalid_type":
      if (value === undefined) return missing(issue.path);
      return refuse("file-type", { path, expected: TYPES[issue.expected] ?? issue.expected, found: kindOfJson(value) })
        .refusal;
    case "invalid_value":
      if (value === undefined) return missing(issue.path);
      return refuse("file-choice", { path, value: shown(value), choices: issue.values.map(String).join(", ") }).refusal;
    case "invalid_union":
      if (value === undefined) return missing(issue.path);
      return refuse("file-type", { path, expected: expectedOfUnion(issue), found: kindOfJson(value) }).refusal;
    case "too_small":
    case "too_big":
      return limitRefusal(issue, path, value);
    case "invalid_key":
      return refuse("file-name", { path, name: String(issue.path.at(-1) ?? "") }).refusal;
    default:
      return refuse("file-name", { path, name: shown(value) }).refusal;
  }
}

const TYPES: Readonly<Record<string, string>> = {
  string: "text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  tuple: "a list",
  object: "an object",
  record: "an object",
  null: "null",
};

function missing(path: Path): Refusal {
  return refuse("file-field-missing", {
    path: pathText(path.slice(0, -1)) || "the file",
    field: String(path.at(-1) ?? ""),
  }).refusal;
}

function limitRefusal(issue: Issue & { code: "too_small" | "too_big" }, path: string, value: unknown): Refusal {
  const most = Number(issue.code === "too_small" ? issue.minimum : issue.maximum);
  const side = issue.code === "too_small" ? "at least" : "at most";
  const what = { string: " characters", array: " entries" }[issue.origin as string] ?? "";
  const size = typeof value === "string" || Array.isArray(value) ? value.length : shown(value);
  return refuse("file-limit", { path, value: size, side, limit: `${most}${what}` }).refusal;
}

function expectedOfUnion(issue: Issue & { code: "invalid_union" }): string {
  const wanted = issue.errors.flat().map((inner) => {
    if (inner.code === "invalid_value") return inner.values.map((value) => JSON.stringify(value)).join(" or ");
    return inner.code === "invalid_type" ? (TYPES[inner.expected] ?? inner.expected) : "";
  });
  return [...new Set(wanted)].filter((word) => word !== "").join(" or ") || "something else";
}

function kindOfJson(value: unknown): string {
  if (value === null) return "null";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "an object";
  return shown(value);
}

function shown(value: unknown): string {
  const text = typeof value === "string" ? value : (JSON.stringify(value) ?? "");
  return text.length > 40 ? `${text.slice(0, 40)}...` : text;
}

function pathText(path: Path): string {
  return path
    .map((step) => (typeof step === "number" ? `[${step}]` : `.${String(step)}`))
    .join("")
    .replace(/^\./, "");
}

function valueAt(file: Json, path: Path): unknown {
  let value: unknown = file;
  for (const step of path) {
    if (value === null || typeof value !== "object" || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[step];
  }
  return value;
}
