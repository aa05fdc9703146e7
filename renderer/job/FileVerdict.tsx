import { shareOf } from "../../core/diagnose/against.ts";
import type { ProbeOrder, Suspect } from "../../core/diagnose/step.ts";
import { fileVerdict } from "../../core/edit/commands/fileVerdict.ts";
import { useApp } from "../state/AppContext.tsx";
import { useMake } from "../state/useMake.ts";
import { jobNow } from "../state/views.ts";

interface Shown {
  readonly suspect: Suspect["id"];
  readonly order: ProbeOrder;
  readonly words: string;
}

/** Files a suspect as the verdict of the job in hand; not there where no job is, or where it is filed already. */
export function FileVerdict({ suspect, order, words }: Shown) {
  const make = useMake();
  const job = useApp(jobNow);
  if (!job || job.verdict?.suspect === suspect) return null;
  const verdict = (): void => {
    const time = new Date().toISOString();
    make((bench) => fileVerdict(bench, { suspect, share: shareOf(order, suspect), time }));
  };
  return (
    <button type="button" className="button is-quiet is-low" onClick={verdict}>
      {words}
    </button>
  );
}
