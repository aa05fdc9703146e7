import { openSample, positionOf, throwTo } from "./acts.ts";
import { expect, story } from "./story.ts";

story(
  "what was done outlasts an end in order, and a second later also a kill",
  { tag: "@both" },
  async ({ program }) => {
    await openSample(program.page, "Roof vents");
    await throwTo(program.page, "S1", "on");
    // A window waits for its page's last edit. A browser lets a closed page go at once; it has the second that is promised.
    if (program.host === "loopback") await program.page.waitForTimeout(1_000);
    await program.restart();
    await expect(positionOf(program.page, "S1", "on")).toHaveAttribute("aria-pressed", "true");
    await throwTo(program.page, "S1", "off");
    await program.page.waitForTimeout(1_000);
    await program.kill();
    await expect(positionOf(program.page, "S1", "off")).toHaveAttribute("aria-pressed", "true");
  },
);
