import { expect, it } from "vitest";
import type { Outcome } from "../../core/base/outcome.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { beginJob } from "../../core/edit/commands/beginJob.ts";
import { changeJob } from "../../core/edit/commands/changeJob.ts";
import { putJobAway } from "../../core/edit/commands/putJobAway.ts";
import { setHappens } from "../../core/edit/commands/setHappens.ts";
import { takeJobUp } from "../../core/edit/commands/takeJobUp.ts";
import { apply, type Edit } from "../../core/edit/edit.ts";
import { jobOf } from "../../core/edit/jobOf.ts";
import { sample } from "../samples/onTheBench.ts";

function after(bench: Bench, edit: Outcome<Edit>): Bench {
  if (!edit.ok) throw new Error(edit.refusal.code);
  const applied = apply(bench, edit.value);
  if (!applied.ok) throw new Error(applied.refusal.code);
  return applied.value.bench;
}

/** What brings the complaint on, as the job tells it and as the wiggle sheet takes it. */
function both(bench: Bench) {
  return { job: bench.job?.when, sheet: bench.happens };
}

const empty = benchFor(sample("4-horn"));

it("what brings a complaint on is said once: in the job in hand and to the wiggle sheet alike", () => {
  const noted = after(empty, setHappens(empty, "wet", true));
  const begun = after(noted, beginJob(noted, "j1"));
  expect(both(begun)).toEqual({ job: ["wet"], sheet: ["wet"] });
  const told = after(begun, changeJob(begun, { when: ["cold", "wet", "bumps"] }));
  expect(both(told)).toEqual({ job: ["cold", "wet", "bumps"], sheet: ["wet", "bumps"] });
  const ticked = after(told, setHappens(told, "wet", false));
  expect(both(ticked)).toEqual({ job: ["cold", "bumps"], sheet: ["bumps"] });
});

it("a job that is taken up brings its circumstances back, from a file that never heard of the sheet too", () => {
  const begun = after(empty, beginJob(empty, "j1", { when: ["hot"] }));
  const job = jobOf(begun)!;
  const away = after(begun, putJobAway(begun));
  const { happens: _, ...older } = job;
  for (const known of [job, older])
    expect(both(after(away, takeJobUp(away, known)))).toEqual({ job: ["hot"], sheet: ["hot"] });
});
