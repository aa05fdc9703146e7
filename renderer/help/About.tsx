import { useEffect, useState } from "react";
import { HELP_WORDS as WORDS } from "../../core/base/words/help/index.ts";
import { useApp } from "../state/AppContext.tsx";

/** What others made, as the build lists it. */
interface ThirdParty {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  readonly text: string;
}

/** Version, engine, where things lie, and the licences of what the program holds. */
export function About() {
  const about = useApp((state) => state.about);
  const others = useOthers();
  return (
    <>
      {about && (
        <dl className="help-terms">
          {[
            [WORDS.version, about.version],
            [WORDS.runsOn, about.runsOn],
            [WORDS.library, about.library],
            [WORDS.reports, about.reports],
          ].map(([term, value]) => (
            <div key={term}>
              <dt>{term}</dt>
              <dd>
                <bdi>{value}</bdi>
              </dd>
            </div>
          ))}
        </dl>
      )}
      <p>{WORDS.licence}</p>
      <h4>{WORDS.others}</h4>
      {others?.length === 0 && <p>{WORDS.noOthers}</p>}
      {others && others.length > 0 && (
        <>
          <p>{WORDS.othersAbout}</p>
          {others.map(({ name, version, licence, text }) => (
            <details key={`${name} ${version}`} className="help-licence">
              <summary>
                {name} {version}, {licence}
              </summary>
              <pre>{text}</pre>
            </details>
          ))}
        </>
      )}
    </>
  );
}

/** The list that lies beside the page; null while it is read, empty where there is none. */
function useOthers(): readonly ThirdParty[] | null {
  const [others, setOthers] = useState<readonly ThirdParty[] | null>(null);
  useEffect(() => {
    let isWanted = true;
    fetch("licences.json")
      .then((response) => (response.ok ? response.json() : []))
      .catch(() => [])
      .then((list: readonly ThirdParty[]) => isWanted && setOthers(list));
    return () => {
      isWanted = false;
    };
  }, []);
  return others;
}
