import type { AttemptRow } from "../../schemas/calls.ts";
import { DeletedList } from "../library/DeletedList.tsx";
import { Icon } from "../panels/Icon.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { opensKey } from "../state/shelf.ts";
import { counted, minutesText } from "../words/figures.ts";
import { LEARNER_WORDS as SAY } from "../words/learner.ts";
import { deletedWords, shownTitle, sinceWords } from "../words/library.ts";

/** Exercises that were opened here, those under way first; not there at all where there is none. */
export function AttemptList() {
  const { dispatch } = useAppStore();
  const { rows, deleted } = useApp((state) => state.attempts);
  const search = useApp(({ shelf }) => shelf.search.trim().toLowerCase());
  const found = rows.filter(({ title, complaint }) => `${title} ${complaint}`.toLowerCase().includes(search));
  if (found.length === 0 && deleted.length === 0) return null;
  return (
    <section className="library-jobs">
      <h2 className="section-title">
        {SAY.exercises} <span className="caption figures">{found.length}</span>
      </h2>
      <ul className="entries">
        {found.map((row) => (
          <AttemptEntry key={row.id} row={row} />
        ))}
      </ul>
      <DeletedList
        title={SAY.deletedExercises}
        things={deleted.map((row) => ({
          key: row.id,
          name: shownTitle(row.title),
          about: deletedWords(row, Date.now()),
          restore: () => dispatch({ do: "restore-attempt", id: row.id }),
        }))}
      />
    </section>
  );
}

function AttemptEntry({ row }: { readonly row: AttemptRow }) {
  const { dispatch } = useAppStore();
  const { id, title, complaint, minutes, moves, isOver } = row;
  const stands = moves === 0 ? SAY.notBegun : `${counted(moves, "act")}, ${minutesText(minutes)}`;
  return (
    <li className="entry">
      <button
        type="button"
        className="entry-open is-exercise"
        data-opens={opensKey({ exercise: id })}
        onClick={() => dispatch({ do: "open-attempt", id })}
      >
        <span className="entry-words">
          <b title={title}>
            <bdi>{shownTitle(title)}</bdi>
          </b>
          <span className="small entry-vehicle">
            <bdi>{complaint}</bdi>
          </span>
          <span className="caption figures">{isOver ? `${SAY.verdictFiled}, ${stands}` : stands}</span>
        </span>
        <span className="entry-since caption">{sinceWords(row.edited, Date.now())}</span>
        <Icon name="onward" />
      </button>
      <button
        type="button"
        className="icon-button entry-bin"
        aria-label={`Delete ${shownTitle(title)}`}
        title="Delete"
        onClick={() => dispatch({ do: "remove-attempt", id })}
      >
        <Icon name="bin" />
      </button>
    </li>
  );
}
