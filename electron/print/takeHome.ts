import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { type Outcome, ok, refuse } from "../../core/base/outcome.ts";
import { ownSpan } from "../../core/base/turning.ts";
import { TAKE_HOME_WORDS } from "../../core/base/words/takeHome.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { escaped } from "../../core/drawing/svg.ts";
import { travelling } from "../../core/lesson/travelling.ts";

/** Where the built script and style of take-home pages lie, under the program's own folder. */
export const TAKE_HOME = join("out", "takehome");
export const SCRIPT = "page.js";
export const STYLE = "page.css";
/** The same for an exercise. */
export const EXERCISE_SCRIPT = "exercise.js";
export const EXERCISE_STYLE = "exercise.css";

/** What every take-home page is made of. */
export interface TakeHomeParts {
  readonly script: string;
  readonly style: string;
}

/** Script and style as they were built into this folder, for a circuit or an exercise; refuses `take-home-missing`. */
export async function takeHomeParts(
  folder: string,
  of: "circuit" | "exercise" = "circuit",
): Promise<Outcome<TakeHomeParts>> {
  const files = of === "circuit" ? [SCRIPT, STYLE] : [EXERCISE_SCRIPT, EXERCISE_STYLE];
  try {
    const [script, style] = await Promise.all(files.map((file) => readFile(join(folder, file), "utf8")));
    return ok({ script: script!, style: style! });
  } catch {
    return refuse("take-home-missing");
  }
}

/**
 * A circuit as one page of HTML that works by itself: opened from a disk it asks for nothing, and its policy lets nothing run
 * but its own script. Faults, readings and pictures of a bench do not travel.
 */
export function takeHomePage(circuit: Circuit, parts: TakeHomeParts): string {
  const data = `<script type="application/json" id="circuit">${dataText(JSON.stringify(travelling(circuit)))}</script>`;
  return pageOf(circuit.title, TAKE_HOME_WORDS.noScript, data, parts);
}

/**
 * An exercise as such a page: its file lies in it as it is, sealed, and the program opens it without showing what is hidden. The
 * text is that of an exercise's file which was read before.
 */
export function exercisePage(title: string, text: string, parts: TakeHomeParts): string {
  const data = `<script type="application/json" id="exercise">${dataText(JSON.stringify(JSON.parse(text)))}</script>`;
  return pageOf(title, TAKE_HOME_WORDS.noExercise, data, parts);
}

function pageOf(title: string, noScript: string, data: string, { script, style }: TakeHomeParts): string {
  const policy = [
    "default-src 'none'",
    `script-src '${hashed(script)}'`,
    `style-src '${hashed(style)}'`,
    "font-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(ownSpan(title))}</title>
<style>${style}</style>
</head>
<body>
<noscript>${escaped(noScript)} ${escaped(TAKE_HOME_WORDS.deference)}</noscript>
${data}
<script>${script}</script>
</body>
</html>
`;
}

function hashed(text: string): string {
  return `sha256-${createHash("sha256").update(text).digest("base64")}`;
}

/** JSON that ends no script element and no line, whatever words are in it. */
function dataText(json: string): string {
  return json.replace(/</g, "\\u003c").replace(/[\u2028\u2029]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16)}`);
}
