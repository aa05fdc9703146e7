import { figure } from "../../core/base/figure.ts";
import { GRADE_WORDS as WORDS } from "../../core/base/words/grade.ts";
import { sentence } from "../../core/base/words.ts";
import { percent } from "../../core/diagnose/progressWords.ts";
import type { Grade } from "../../core/lesson/grade.ts";
import { Icon } from "../panels/Icon.tsx";
import { minutesText } from "../words/figures.ts";
import { COLUMN_TITLES, COLUMNS, type Column } from "./handinColumns.ts";
import { type HandinIn, listedHandins } from "./handins.ts";
import { useHandins } from "./useHandins.ts";
import { resultTitle } from "./words.ts";

/** The table of a class: a head sorts by its column, a name opens the route. */
export function HandinTable() {
  const { desk } = useHandins();
  return (
    <div className="handins-scroll">
      <table className="handins-table">
        <thead>
          <tr>
            {COLUMNS.map((column) => (
              <Head key={column} column={column} />
            ))}
            <td />
          </tr>
        </thead>
        <tbody>
          {listedHandins(desk).map((handin) => (
            <Row key={handin.key} handin={handin} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Head({ column }: { readonly column: Column }) {
  const { desk, ask } = useHandins();
  const sorted = desk.sort?.by === column ? (desk.sort.isDown ? "descending" : "ascending") : undefined;
  return (
    <th scope="col" aria-sort={sorted}>
      <button type="button" onClick={() => ask({ act: "sort", by: column })}>
        {COLUMN_TITLES[column]}
        {sorted !== undefined && <Icon name={sorted === "ascending" ? "up" : "down"} size={16} />}
      </button>
    </th>
  );
}

function Row({ handin }: { readonly handin: HandinIn }) {
  const { ask } = useHandins();
  const { key, name, marked } = handin;
  const learner = marked?.learner ?? name;
  const grade = marked?.grade;
  return (
    <tr>
      <th scope="row">
        {grade ? (
          <button type="button" className="handins-name" data-handin={key} onClick={() => ask({ act: "look", key })}>
            <bdi>{learner}</bdi>
          </button>
        ) : (
          learner
        )}
      </th>
      <td>{marked?.exercise}</td>
      {grade ? <Graded grade={grade} /> : <Ungraded handin={handin} />}
      <td>
        <button
          type="button"
          className="icon-button is-small"
          aria-label={`Put away: ${learner}`}
          title="Put away"
          onClick={() => ask({ act: "put-away", key })}
        >
          <Icon name="close" size={16} />
        </button>
      </td>
    </tr>
  );
}

function Graded({ grade }: { readonly grade: Grade }) {
  const { verdict, proof, minutes, plannersMinutes, readings, wasted, wrongTurn, hints } = grade;
  return (
    <>
      <td>
        <b>{resultTitle(grade)}</b>
        {verdict !== null && <span className="small">{verdict}</span>}
        {proof?.missing && (
          <span className="small">
            Others {percent(proof.others)}; missing: {WORDS.missing(proof.missing.row, proof.missing.other)}
          </span>
        )}
      </td>
      <td className="is-figure">
        {minutesText(minutes)}
        {plannersMinutes !== null && <span className="small">of {minutesText(plannersMinutes)}</span>}
        {hints > 0 && <span className="small">{hints === 1 ? "1 hint" : `${hints} hints`}</span>}
      </td>
      <td className="is-figure">{readings}</td>
      <td className="is-figure is-list">
        {wasted.length}
        {wasted.length > 0 && (
          <span className="small">
            {wasted.length === 1 ? "move" : "moves"} {wasted.join(", ")}
          </span>
        )}
      </td>
      <td>{wrongTurn && WORDS.turn(wrongTurn.move, figure(wrongTurn.dearer, 1), wrongTurn.better)}</td>
    </>
  );
}

/** What cannot be graded says why, over all columns. */
function Ungraded({ handin: { marked } }: { readonly handin: HandinIn }) {
  return (
    <td colSpan={COLUMNS.length - 2}>
      {marked?.refusal ? (
        <span className="handins-refused">
          <Icon name="note" size={16} />
          {sentence(marked.refusal)}
        </span>
      ) : (
        <span className="small">Waits to be graded</span>
      )}
    </td>
  );
}
