import type { Circuit } from "../../core/circuit/circuit.ts";
import { wiringOf } from "../../core/edit/wiring.ts";
import { conditionText } from "../../core/live/condition.ts";
import { faultText } from "../../core/live/fault.ts";
import type { Asker } from "../workers/asker.ts";
import type { Question } from "../workers/question.ts";
import type { HostAnswer } from "./hostAction.ts";
import { connectorsOf } from "./places.ts";
import { foundNow, sheetsWanted } from "./printing.ts";
import type { AppState, Open } from "./state.ts";
import type { AppStore, Reaction } from "./store.ts";
import { weighingNow } from "./weighingNow.ts";

/** A question that a view needs answered, and the text of it: the same text for the same circuit is asked once. */
interface Wanted {
  readonly question: Question;
  readonly text: string;
}

/** What was asked last: for which bench, about which circuit, in which words. */
interface Last {
  readonly bench: number;
  readonly circuit: Circuit;
  readonly text: string;
}

/**
 * Asks the worker again whenever what a view in sight rests on has changed. Placement does not count: it moves no volt.
 * An answer that comes once something newer was asked is let go.
 */
export function askingReaction(asker: Asker): Reaction {
  const last = new Map<Question["ask"], Last>();
  return (_action, state, before, store) => {
    const { open } = state;
    const isNew = open !== before.open || state.isPrinting !== before.isPrinting || state.settings !== before.settings;
    if (!open || !isNew) return;
    const circuit = wiringOf(open.desk.bench.circuit);
    for (const { question, text } of wantedIn(open, state)) {
      const known = last.get(question.ask);
      if (known?.bench === open.number && known.circuit === circuit && known.text === text) continue;
      const asked: Last = { bench: open.number, circuit, text };
      last.set(question.ask, asked);
      const isLast = (): boolean => {
        return last.get(question.ask) === asked && store.getState().open?.number === asked.bench;
      };
      void ask(asker, store, { circuit, question, isLast });
    }
  };
}

function wantedIn(open: Open, state: AppState): readonly Wanted[] {
  const { desk, panel, connector, printing, place, isSeeking, jumper } = open;
  const { bench } = desk;
  const weighing = weighingNow(open, state.settings);
  const wanted: Wanted[] = [];
  if (bench.complaint !== null) {
    const { complaint, observed, readings, batteryVolts, sleepingAmps, when, wiggled } = bench;
    const question = {
      ask: "order",
      complaint,
      observed,
      readings,
      batteryVolts,
      sleepingAmps,
      when,
      wiggled,
      weighing,
    } as const;
    wanted.push({ question, text: JSON.stringify(question) });
  }
  const found = foundNow(open);
  if (found && bench.complaint !== null && (panel === "suspects" || panel === "order")) {
    const { complaint, batteryVolts } = bench;
    const living = open.order.answer?.order.suspects ?? [];
    const question = { ask: "proof", complaint, found, living, batteryVolts } as const;
    wanted.push({ question, text: JSON.stringify([complaint, batteryVolts, found.id, living.map(({ id }) => id)]) });
  }
  const faults = bench.showFaults ? bench.faults : [];
  const named = faults.map(faultText).join(" ");
  if (panel === "table") {
    const connectors = connector === "" ? connectorsOf(bench.circuit).map(({ id }) => id) : [connector];
    wanted.push({ question: { ask: "table", connectors, faults }, text: `${connectors.join(" ")} ${named}` });
  }
  if (panel === "works" && bench.faults.length > 0)
    wanted.push({
      question: { ask: "verdicts", faults: bench.faults },
      text: bench.faults.map(faultText).join(" "),
    });
  if (panel === "shares" && place !== "") wanted.push({ question: { ask: "shares", place }, text: place });
  if (panel === "shares" && jumper.from !== "" && jumper.to !== "") {
    const { from, to, fuseAmps } = jumper;
    const question = { ask: "jumper", from, to, fuseAmps, condition: bench.condition, faults } as const;
    wanted.push({ question, text: [from, to, fuseAmps ?? "", conditionText(bench.condition), named].join(" ") });
  }
  if (panel === "shares" && isSeeking) wanted.push({ question: { ask: "sneaks" }, text: "sneaks" });
  if (state.isPrinting) {
    const question = { ask: "pages", wanted: sheetsWanted(bench, printing, state.settings, weighing, found) } as const;
    wanted.push({ question, text: JSON.stringify(question) });
  }
  return wanted;
}

interface Going {
  readonly circuit: Circuit;
  readonly question: Question;
  /** False once something newer was asked, or another bench was brought out. */
  readonly isLast: () => boolean;
}

async function ask(asker: Asker, store: AppStore, { circuit, question, isLast }: Going): Promise<void> {
  const about = question.ask;
  store.dispatch({ do: "asked", about });
  try {
    const answer = await answerOf(asker, circuit, question);
    if (answer && isLast()) store.dispatch(answer);
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    if (isLast()) store.dispatch({ do: "worker-troubled", about, words, fault: error });
  }
}

/** The answer as an action; null where a newer question has taken this one's place. */
async function answerOf(asker: Asker, circuit: Circuit, question: Question): Promise<HostAnswer | null> {
  switch (question.ask) {
    case "order": {
      const answer = await asker.ask<"order">(circuit, question);
      return answer && { do: "ordered", answer };
    }
    case "proof": {
      const answer = await asker.ask<"proof">(circuit, question);
      return answer && { do: "proven", answer };
    }
    case "table": {
      const answer = await asker.ask<"table">(circuit, question);
      return answer && { do: "tabled", answer };
    }
    case "pages": {
      const answer = await asker.ask<"pages">(circuit, question);
      return answer && { do: "paged", answer };
    }
    case "shares": {
      const answer = await asker.ask<"shares">(circuit, question);
      return answer && { do: "shared", answer };
    }
    case "sneaks": {
      const answer = await asker.ask<"sneaks">(circuit, question);
      return answer && { do: "sneaks-found", answer };
    }
    case "jumper": {
      const answer = await asker.ask<"jumper">(circuit, question);
      return answer && { do: "jumped", answer };
    }
    case "verdicts": {
      const answer = await asker.ask<"verdicts">(circuit, question);
      return answer && { do: "judged", answer };
    }
  }
}
