import { against, shareOf } from "../../core/diagnose/against.ts";
import type { JobAbout } from "../../core/diagnose/job.ts";
import { NO_ORDER } from "../../core/diagnose/order.ts";
import { percent } from "../../core/diagnose/progressWords.ts";
import { fileVerdict } from "../../core/edit/commands/fileVerdict.ts";
import { type Offer, ValueField } from "../panels/ValueField.tsx";
import { useApp } from "../state/AppContext.tsx";
import type { Command } from "../state/action.ts";
import { orderNow } from "../state/views.ts";

/** Suspects that are offered while a verdict is typed. */
const MOST_OFFERED = 30;

/** The verdict: filed, typed or taken back, how likely it was then, and what speaks against it by now. */
export function JobVerdict({ job }: { readonly job: JobAbout }) {
  const { answer, isOld } = useApp(orderNow);
  const order = answer?.order ?? NO_ORDER;
  const { verdict } = job;
  const filed = (typed: string): Command => {
    const suspect = typed.trim();
    const time = new Date().toISOString();
    return (bench) => fileVerdict(bench, suspect === "" ? null : { suspect, share: shareOf(order, suspect), time });
  };
  const offers = (): readonly Offer[] =>
    order.suspects.slice(0, MOST_OFFERED).map(({ id, title, probability }) => ({
      text: id,
      words: `${title}, ${percent(probability)}`,
    }));
  const objections = verdict && answer && !isOld ? against(order, verdict.suspect) : [];
  return (
    <div className="job-verdict">
      <ValueField
        label="Verdict"
        value={verdict?.suspect ?? ""}
        usual="such as W14:open"
        offers={offers}
        change={filed}
      />
      {verdict && <p className="caption figures">{percent(verdict.share)} when it was filed.</p>}
      {objections.map((words) => (
        <p key={words} className="small job-against">
          {words}
        </p>
      ))}
    </div>
  );
}
