import { type Outcome, ok, type Refusal, refuse } from "../core/base/outcome.ts";
import { LIMITS } from "./limits.ts";

/** What JSON can say. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json };

/**
 * Reads JSON, stricter than the language's own reader: a name twice in one object is refused, since one of the two
 * would be lost without a word. Refuses `file-json`, `file-name-twice`, `file-name` and `file-too-deep`, each with
 * line and column, both from 1.
 */
export function parseJson(text: string): Outcome<Json> {
  try {
    return ok(new Reader(text).document());
  } catch (stop) {
    if (stop instanceof Stop) return { ok: false, refusal: stop.refusal };
    throw stop;
  }
}

/** Carries a refusal out of the nested readers; never leaves this file. */
class Stop extends Error {
  readonly refusal: Refusal;
  constructor(refusal: Refusal) {
    super(refusal.code);
    this.refusal = refusal;
  }
}

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;
const SPACE = /[ \t\r\n]*/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids them bare in strings
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const WORDS: Readonly<Record<string, Json>> = { true: true, false: false, null: null };

class Reader {
  private readonly text: string;
  private at = 0;
  private depth = 0;

  constructor(text: string) {
    this.text = text;
  }

  document(): Json {
    this.take(SPACE);
    const value = this.value();
    if (this.at < this.text.length) this.stop("file-json", { found: this.found() });
    return value;
  }

  /** Moves past what the pattern matches here and gives it back; "" where it does not match. */
  private take(pattern: RegExp): string {
    pattern.lastIndex = this.at;
    const match = pattern.exec(this.text)?.[0] ?? "";
    this.at += match.length;
    return match;
  }

  private mark(sign: string): boolean {
    if (this.text[this.at] !== sign) return false;
    this.at++;
    this.take(SPACE);
    return true;
  }

  private need(sign: string): void {
    if (!this.mark(sign)) this.stop("file-json", { found: this.found() });
  }

  private value(): Json {
    const sign = this.text[this.at];
    if (sign === "{") return this.nested(() => this.object());
    if (sign === "[") return this.nested(() => this.array());
    if (sign === '"') return this.string();
    const word = this.take(WORD);
    const number = word === "" ? this.take(NUMBER) : "";
    if (word === "" && number === "") this.stop("file-json", { found: this.found() });
    this.take(SPACE);
    return word === "" ? Number(number) : WORDS[word]!;
  }

  private nested<T>(read: () => T): T {
    if (++this.depth > LIMITS.depth) this.stop("file-too-deep", { limit: LIMITS.depth });
    const value = read();
    this.depth--;
    return value;
  }

  private object(): Json {
    const object: Record<string, Json> = {};
    this.need("{");
    if (this.mark("}")) return object;
    do {
      const start = this.at;
      const name = this.string();
      this.need(":");
      const value = this.value();
      if (name === "__proto__") this.stop("file-name", { name }, start);
      if (Object.hasOwn(object, name)) this.stop("file-name-twice", { name }, start);
      object[name] = value;
    } while (this.mark(","));
    this.need("}");
    return object;
  }

  private array(): Json {
    const list: Json[] = [];
    this.need("[");
    if (this.mark("]")) return list;
    do list.push(this.value());
    while (this.mark(","));
    this.need("]");
    return list;
  }

  private string(): string {
    const quoted = this.take(STRING);
    if (quoted === "") this.stop("file-json", { found: this.found() });
    this.take(SPACE);
    return quoted.includes("\\") ? (JSON.parse(quoted) as string) : quoted.slice(1, -1);
  }

  private found(): string {
    const rest = this.text.slice(this.at, this.at + 12).split(/[\r\n]/)[0]!;
    return this.at >= this.text.length ? "the end of the file" : rest === "" ? "the end of the line" : rest;
  }

  private stop(code: string, about: Readonly<Record<string, string | number>>, at = this.at): never {
    const before = this.text.slice(0, at);
    const line = before.split("\n").length;
    const column = at - before.lastIndexOf("\n");
    throw new Stop(refuse(code, { ...about, line, column }).refusal);
  }
}
