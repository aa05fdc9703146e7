import { useApp, useAppStore } from "../state/AppContext.tsx";
import { opensKey, sampleKey } from "../state/shelf.ts";
import { isLesson, lessonFacts, lessonOf } from "../words/library.ts";
import { CircuitPicture } from "./CircuitPicture.tsx";

interface Shown {
  readonly title: string;
  readonly note: string;
  /** Which of them: the vehicles, or the boards of the lessons. */
  readonly are: "vehicles" | "lessons";
}

/** Samples as tiles, each with what it teaches. */
export function Samples({ title, note, are }: Shown) {
  const { dispatch } = useAppStore();
  const all = useApp(({ shelf }) => shelf.samples);
  const samples = all.filter((row) => isLesson(row) === (are === "lessons"));
  if (samples.length === 0) return null;
  return (
    <section className={`samples are-${are}`}>
      <h2 className="section-title">
        {title} <span className="caption">{note}</span>
      </h2>
      <ul className="tiles">
        {samples.map((row) => (
          <li key={row.sample}>
            <button
              type="button"
              className="tile"
              data-opens={opensKey(row)}
              onClick={() => dispatch({ do: "open-sample", sample: row.sample })}
            >
              <CircuitPicture picture={sampleKey(row)} />
              <b title={row.title}>
                <bdi>{row.title}</bdi>
              </b>
              <span className="caption">{lessonOf(row)}</span>
              {isLesson(row) && <span className="caption">{lessonFacts(row)}</span>}
            </button>
            {row.exercises.map((exercise, index) => (
              <button
                key={exercise}
                type="button"
                className="button is-quiet is-low"
                aria-label={`Find hidden fault ${index + 1} of ${row.title}`}
                onClick={() => dispatch({ do: "open-sample-exercise", exercise })}
              >
                Find fault {index + 1}
              </button>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}
