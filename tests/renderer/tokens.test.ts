import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";

const STYLE = new URL("../../renderer/style/", import.meta.url);
const css = readFileSync(new URL("tokens.css", STYLE), "utf8");

type Look = Readonly<Record<string, string>>;

/** The colours of a look by their names; the dark one has those of the light one where it names none. */
function lookOf(theme: "light" | "dark"): Look {
  const block = (from: string): Look => {
    const start = css.indexOf(from);
    const text = css.slice(start, css.indexOf("}", start));
    return Object.fromEntries(
      [...text.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})\s*;/g)].map(([, name, hex]) => [name, hex]),
    );
  };
  const light = block('[data-theme="light"] {');
  return theme === "light" ? light : { ...light, ...block('[data-theme="dark"] {') };
}

/** Relative luminance and contrast as WCAG 2.2 defines them ("relative luminance", "contrast ratio"). */
function luminance(hex: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}
function contrast(one: string, other: string): number {
  const [dark, light] = [luminance(one), luminance(other)].toSorted((a, b) => a - b);
  return (light! + 0.05) / (dark! + 0.05);
}

const GROUNDS = ["desk", "panel", "raised", "sheet"];
/** What words are set in, on which grounds. */
const WORDS: readonly (readonly [ink: string, grounds: readonly string[]])[] = [
  ["ink", [...GROUNDS, "hover", "part", "accent-soft"]],
  ["ink-2", [...GROUNDS, "hover", "part", "accent-soft"]],
  ["ink-3", [...GROUNDS, "hover"]],
  ["accent", [...GROUNDS, "hover", "accent-soft"]],
  ["on-accent", ["accent"]],
];
/** Edges of controls, the line round what has the keys, and the lines of wires, on which grounds. */
const LINES: readonly (readonly [ink: string, grounds: readonly string[]])[] = [
  ["edge", ["desk", "panel", "raised", "sheet"]],
  ["accent", [...GROUNDS, "hover", "part"]],
  ["feed", ["sheet", "panel", "raised"]],
  ["return", ["sheet", "panel", "raised"]],
  ["between", ["sheet", "panel", "raised"]],
  ["floating", ["sheet", "panel", "raised"]],
  ["clash", ["sheet", "panel", "raised"]],
];

describe.each(["light", "dark"] as const)("the %s look", (theme) => {
  const look = lookOf(theme);
  const under = (pairs: typeof WORDS, least: number): readonly string[] =>
    pairs.flatMap(([ink, grounds]) =>
      grounds.flatMap((ground) => {
        const ratio = contrast(look[ink]!, look[ground]!);
        return ratio >= least ? [] : [`${ink} on ${ground} ${ratio.toFixed(2)}`];
      }),
    );

  test("sets words at 4.5:1 at least on every ground (WCAG 2.2, 1.4.3)", () => expect(under(WORDS, 4.5)).toEqual([]));

  test("draws edges, the line of the keys and wires at 3:1 at least (1.4.11)", () =>
    expect(under(LINES, 3)).toEqual([]));
});

test("no words are faded: what is dimmed has a colour of its own", () => {
  const faded = readdirSync(STYLE).flatMap((file) => {
    const rules = readFileSync(new URL(file, STYLE), "utf8").matchAll(/([^{}]+)\{[^{}]*\bopacity: 0?\.\d+;[^{}]*\}/g);
    return [...rules].map(([, selector]) => selector!.trim().split("\n").at(-1));
  });
  // A line under a rest position, and the ground under a line.
  expect(faded.toSorted()).toEqual([".paper-outline .is-ground", ".segment.is-rest::after"]);
});
