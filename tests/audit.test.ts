import { describe, expect, it } from "vitest";
import { audited, electronAudited } from "./audit.ts";

const FOUND = {
  auditReportVersion: 2,
  vulnerabilities: {
    fontkit: {
      severity: "high",
      range: "<2.0.5",
      via: [{ title: "Endless loop", url: "https://advisories.example/1" }],
    },
    pdfkit: { severity: "high", range: "<0.21", via: ["fontkit"] },
  },
};

describe("what the registry says of the packages", () => {
  it("is told line by line, and is a finding until each is explained", () => {
    const { lines, isClean } = audited(JSON.stringify(FOUND), { fontkit: "no font from outside is read" });
    expect(isClean).toBe(false);
    expect(lines[0]).toBe(
      "fontkit <2.0.5, high: Endless loop https://advisories.example/1 - explained: no font from outside is read",
    );
    expect(lines[1]).toBe("pdfkit <0.21, high: by fontkit");
    expect(audited(JSON.stringify(FOUND), { fontkit: "a", pdfkit: "b" }).isClean).toBe(true);
    expect(audited('{"vulnerabilities":{}}', {})).toEqual({
      lines: [expect.stringContaining("nothing")],
      isClean: true,
    });
  });

  it.each(["", 'npm error audit endpoint returned an error\n{"message":"405"}', "{", "[]"])(
    "is nothing where it says %j",
    (said) => {
      expect(audited(said, {})).toEqual({ lines: [expect.stringContaining("nothing is known")], isClean: true });
    },
  );
});

it("an Electron is mended until its third follower is out, and one that nobody wrote down is not", () => {
  expect(electronAudited("45.4.1", new Date("2027-04-06")).isClean).toBe(true);
  expect(electronAudited("45.4.1", new Date("2027-04-08")).isClean).toBe(false);
  expect(electronAudited("12.0.0", new Date("2026-01-01")).isClean).toBe(false);
});
