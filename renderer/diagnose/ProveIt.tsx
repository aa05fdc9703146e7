import type { Circuit } from "../../core/circuit/circuit.ts";
import type { ProofRun } from "../../core/diagnose/proofRun.ts";
import { type Reading, readingOf, type Shows } from "../../core/diagnose/reading.ts";
import { relearnText } from "../../core/diagnose/relearn.ts";
import { changeJob } from "../../core/edit/commands/changeJob.ts";
import { takeReadings } from "../../core/edit/commands/takeReadings.ts";
import { Icon } from "../panels/Icon.tsx";
import { Working } from "../panels/Working.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { foundNow, NOTHING_SAID } from "../state/printing.ts";
import { useMake } from "../state/useMake.ts";
import { handoverNow, proofNow, readAfterNow, readingsNow } from "../state/views.ts";
import { isMended, probeOfRow, readIn } from "../words/proof.ts";
import { ProofRowView } from "./ProofRowView.tsx";

/**
 * Once something is found: the readings under load that tell mended from masked, with fields for what is read before the
 * repair and after it, the checks to repeat, and what must be learnt anew. What is read before counts as a reading.
 */
export function ProveIt({ circuit }: { readonly circuit: Circuit }) {
  const isFound = useApp(({ open }) => open !== null && foundNow(open) !== null);
  const { answer, isOld, trouble } = useApp(proofNow);
  if (!isFound) return null;
  if (trouble !== null) return <p className="error">The proof could not be worked out: {trouble}</p>;
  if (answer === null) return isOld ? <Working words="Looking for what would mask it" /> : null;
  const { run: proof } = answer;
  if (proof === null) return <p className="small">No reading under load can prove this one.</p>;
  return (
    <section className="prove" aria-label="Prove it">
      <h3 className="prove-title">Prove it</h3>
      <Rows circuit={circuit} proof={proof} />
      <Lists proof={proof} />
    </section>
  );
}

function Rows({ circuit, proof }: { readonly circuit: Circuit; readonly proof: ProofRun }) {
  const { dispatch } = useAppStore();
  const make = useMake();
  const before = useApp(readingsNow);
  const said = useApp(handoverNow);
  const hasJob = useApp(({ open }) => (open?.desk.bench.job ?? null) !== null);
  const after = useApp(readAfterNow);
  const mended = proof.rows.filter((row) => {
    const read = readIn(after, row);
    return read !== null && isMended(row, read);
  });
  const taken = (row: ProofRun["rows"][number], shows: Shows): Reading => ({
    ...readingOf(probeOfRow(row), shows),
    time: new Date().toISOString(),
  });
  return (
    <>
      <p className="small" role="status">
        {mended.length === proof.rows.length
          ? "Every row lies in its window: mended, once the checks below work."
          : "Prove before fitting: read each row now and again after the repair, with the load running."}
      </p>
      <ol className="prove-rows">
        {proof.rows.map((row) => (
          <ProofRowView
            key={row.step.number}
            circuit={circuit}
            row={row}
            before={readIn(before, row)}
            after={readIn(after, row)}
            onBefore={(shows) => make((bench) => takeReadings(bench, [taken(row, shows)]))}
            onAfter={(shows) => {
              const readings = [...after, taken(row, shows)];
              if (hasJob) make((bench) => changeJob(bench, { after: readings }));
              else dispatch({ do: "print-what", sheets: { handover: { ...(said ?? NOTHING_SAID), readings } } });
            }}
          />
        ))}
      </ol>
    </>
  );
}

function Lists({ proof }: { readonly proof: ProofRun }) {
  const { checks, looks, masked, relearn } = proof;
  return (
    <>
      <List
        title="Repeat these checks"
        lines={checks.map(({ check, why }) => [check.label, why])}
        isOpened={checks.length <= MOST_OPEN}
      />
      <List
        title="Not told by any row: look"
        lines={looks.map((number) => [masked[number]!.title, ""])}
        isOpened={looks.length <= MOST_OPEN}
      />
      <List
        title="To be learnt anew, the maker’s procedure first"
        lines={relearn.map((each) => [relearnText(each), each.source.document])}
        isOpened
      />
    </>
  );
}

/** Lists longer than this are folded. */
const MOST_OPEN = 6;

interface Listed {
  readonly title: string;
  readonly lines: readonly (readonly [string, string])[];
  readonly isOpened: boolean;
}

function List({ title, lines, isOpened }: Listed) {
  if (lines.length === 0) return null;
  return (
    <details className="prove-list" open={isOpened}>
      <summary>
        <Icon name="onward" size={16} />
        {title} <span className="figures">{lines.length}</span>
      </summary>
      <ul>
        {lines.map(([line, about]) => (
          <li key={line} className="small">
            {line}
            {about !== "" && <span className="prove-about"> {about}</span>}
          </li>
        ))}
      </ul>
    </details>
  );
}
