import { describe, expect, it } from "vitest";
import { askedBy, COMMAND_NAMES } from "../../electron/terminal/commandNames.ts";
import { runTerminal } from "../../electron/terminal/program.ts";

describe("what the packed program is asked for", () => {
  it("knows the commands of the terminal, all but the one that is itself", async () => {
    let help = "";
    await runTerminal(["--help"], {
      write: (text) => {
        help += text;
      },
      complain: () => {},
      hasColour: false,
      width: 100,
    });
    const listed = [...help.matchAll(/^ {2}([a-z]+)(?= )/gm)].map(([, name]) => name!);
    expect(listed.filter((name) => name !== "open" && name !== "help").toSorted()).toEqual(
      [...COMMAND_NAMES].toSorted(),
    );
  });

  it("is a command with its words, else a window, with a file or none", () => {
    expect(askedBy(["check", "a.circuit.json", "--json"])).toEqual({ command: ["check", "a.circuit.json", "--json"] });
    expect(askedBy(["--ozone-platform=headless", "live", "--help"])).toEqual({ command: ["live", "--help"] });
    expect(askedBy(["--help"])).toEqual({ command: ["--help"] });
    for (const words of [[], [""], ["--no-sandbox"], ["open"]]) expect(askedBy(words)).toEqual({ file: null });
    for (const words of [["a.wirefathom"], ["open", "a.wirefathom"], ["--no-sandbox", "a.wirefathom", "--json"]])
      expect(askedBy(words)).toEqual({ file: "a.wirefathom" });
    expect(askedBy(["./check"])).toEqual({ file: "./check" });
  });
});
