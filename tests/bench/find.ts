import { lotsFrom } from "../../core/base/seed.ts";
import { greedy } from "../../core/diagnose/plan/greedy.ts";
import { tellsOf } from "../../core/diagnose/plan/information.ts";
import { planner } from "../../core/diagnose/plan/next.ts";
import { allLiving, type Living, type ProbeChoice, type Problem, START } from "../../core/diagnose/plan/problem.ts";
import { mediansMs } from "./measure.ts";

const SUSPECTS = 400;
const PROBES = 3_200;
const REPAIRS = 160;
const SEED = 1990;

/** A branched feed with a switch in every leg: what a probe shows depends on where on the tree the break is. */
function problem(): Problem {
  const lot = lotsFrom(SEED);
  const draw = (below: number): number => Math.floor(lot() * below);
  const parents = Array.from({ length: SUSPECTS }, (_, at) => (at === 0 ? -1 : Math.max(0, at - 1 - draw(6))));
  const isBehind = (at: number, probe: number): boolean => {
    for (let place = probe; place >= 0; place = parents[place]!) if (place === at) return true;
    return false;
  };
  const probes = Array.from({ length: PROBES }, (): ProbeChoice => {
    const point = draw(SUSPECTS);
    // In one switch position of four the leg is not fed at all, and a poor joint shows by its own class.
    const turn = draw(4);
    const classes = Uint8Array.from({ length: SUSPECTS }, (_, at) =>
      turn === at % 4 ? 0 : isBehind(at, point) ? (at % 3 === 0 ? 2 : 1) : 0,
    );
    const [minutes, trim, place] = [0.5 + draw(4) / 2, [0, 1, 2, 4, 8][draw(5)]!, draw(5)];
    return { classes, minutes, trim, place, mode: draw(3) };
  });
  return {
    weights: Float64Array.from({ length: SUSPECTS }, () => 0.2 + lot()),
    repairs: Uint16Array.from({ length: SUSPECTS }, (_, at) => at % REPAIRS),
    probes,
    trimMinutes: [2, 5, 8, 12],
    changePlace: 0.5,
    changeMode: 0.2,
  };
}

/** Reads every class of the table once, with the weight of its suspect: what any planner must do at least. */
function plainPass({ probes, weights }: Problem, living: Living): number {
  const mass = new Float64Array(256);
  let most = 0;
  for (const { classes } of probes) {
    mass.fill(0);
    for (const each of living) mass[classes[each]!]! += weights[each]!;
    most = Math.max(most, mass[1]!);
  }
  return most;
}

/** A sweep may cost this many plain passes, and the best answer this many. */
const SWEEP_CEILING = 1.5;
const ANSWER_CEILING = 20;

/** Times the planner on 400 suspects and 3,200 probes against a plain pass over the same table. */
export function benchFind(): readonly string[] {
  const given = problem();
  const living = allLiving(given);
  const tells = tellsOf(given);
  const all = given.probes.map((_, probe) => probe);
  const sweep = greedy(given, tells);
  const { passMs, layMs, sweepMs, answerMs } = mediansMs(
    {
      passMs: () => plainPass(given, living),
      layMs: () => tellsOf({ ...given }),
      sweepMs: () => sweep(living, START, all),
      // From the bare table: laid out, thinned out, answered.
      answerMs: () => planner({ ...given })(living, START),
    },
    { times: 100, mostMs: 10_000 },
  );
  console.table([
    {
      suspects: SUSPECTS,
      probes: PROBES,
      "plain pass, ms": passMs.toFixed(1),
      "laying out, ms": layMs.toFixed(1),
      "greedy sweep, ms": sweepMs.toFixed(1),
      "sweep / pass": (sweepMs / passMs).toFixed(2),
      "best answer, ms": answerMs.toFixed(0),
      "answer / pass": (answerMs / passMs).toFixed(1),
    },
  ]);
  const below: string[] = [];
  if (!(sweepMs <= SWEEP_CEILING * passMs))
    below.push(
      `a greedy sweep costs ${(sweepMs / passMs).toFixed(2)} plain passes, at most ${SWEEP_CEILING} are allowed`,
    );
  if (!(answerMs <= ANSWER_CEILING * passMs))
    below.push(
      `the best answer costs ${(answerMs / passMs).toFixed(1)} plain passes, at most ${ANSWER_CEILING} are allowed`,
    );
  return below;
}
