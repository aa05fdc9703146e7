import { useApp, useAppStore } from "../state/AppContext.tsx";
import { opensKey, sampleKey } from "../state/shelf.ts";
import { lessonOf } from "../words/library.ts";
import { CircuitPicture } from "./CircuitPicture.tsx";

/** The samples as tiles, each with what it teaches. */
export function Samples({ title, note }: { readonly title: string; readonly note: string }) {
  const { dispatch } = useAppStore();
  const samples = useApp(({ shelf }) => shelf.samples);
  return (
    <section className="library-samples">
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
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
