import { expect, it } from "vitest";
import type { Outcome } from "../../core/base/outcome.ts";
import { happensIn } from "../../core/diagnose/comesAndGoes.ts";
import type { Bench } from "../../core/edit/bench.ts";
import { benchFor } from "../../core/edit/bench.ts";
import { beginJob } from "../../core/edit/commands/beginJob.ts";
import { putJobAway } from "../../core/edit/commands/putJobAway.ts";
import { setWhen } from "../../core/edit/commands/setWhen.ts";
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

/** When the complaint shows, as the job tells it and as the wiggle sheet takes it. */
function both(bench: Bench) {
  return { job: jobOf(bench)?.when, sheet: happensIn(bench.when) };
}

const empty = benchFor(sample("4-horn"));

it("when a complaint shows is said once: in the job in hand and to the wiggle sheet alike", () => {
  const noted = after(empty, setWhen(empty, "wet", true));
  const begun = after(noted, beginJob(noted, "j1"));
  expect(both(begun)).toEqual({ job: ["wet"], sheet: ["wet"] });
  const colder = after(begun, setWhen(begun, "cold", true));
  const told = after(colder, setWhen(colder, "bumps", true));
  expect(both(told)).toEqual({ job: ["cold", "wet", "bumps"], sheet: ["wet", "bumps"] });
  const ticked = after(told, setWhen(told, "wet", false));
  expect(both(ticked)).toEqual({ job: ["cold", "bumps"], sheet: ["bumps"] });
});

it("a job that is put away takes its circumstances along, and brings them back", () => {
  const noted = after(empty, setWhen(empty, "hot", true));
  const begun = after(noted, beginJob(noted, "j1"));
  const job = jobOf(begun)!;
  const away = after(begun, putJobAway(begun));
  expect(both(away)).toEqual({ job: undefined, sheet: [] });
  expect(both(after(away, takeJobUp(away, job)))).toEqual({ job: ["hot"], sheet: ["hot"] });
});
