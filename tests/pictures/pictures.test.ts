import { existsSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { PICTURES } from "./pictures.ts";

test.each(PICTURES)("$file is drawn as it was when last looked at", ({ file, svg }) => {
  const path = new URL(`./golden/${file}`, import.meta.url);
  expect(existsSync(path)).toBe(true);
  expect(svg()).toBe(readFileSync(path, "utf8"));
});
