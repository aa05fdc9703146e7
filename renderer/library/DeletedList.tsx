import { Icon } from "../panels/Icon.tsx";

/** Something deleted that can be brought back. */
export interface DeletedThing {
  readonly key: string;
  readonly name: string;
  /** When it was deleted, and how long it is kept. */
  readonly about: string;
  readonly restore: () => void;
}

interface Shown {
  readonly title: string;
  readonly things: readonly DeletedThing[];
}

/** What was deleted and can still be brought back; folded, and not there at all where there is none. */
export function DeletedList({ title, things }: Shown) {
  if (things.length === 0) return null;
  return (
    <details className="deleted">
      <summary>
        <Icon name="onward" size={16} />
        {title} <span className="caption figures">{things.length}</span>
      </summary>
      <ul>
        {things.map(({ key, name, about, restore }) => (
          <li key={key} className="deleted-row">
            <span className="entry-words">
              <b title={name}>
                <bdi>{name}</bdi>
              </b>
              <span className="caption figures">{about}</span>
            </span>
            <button
              type="button"
              className="button is-quiet is-low"
              aria-label={`Bring ${name} back`}
              onClick={restore}
            >
              Bring it back
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
