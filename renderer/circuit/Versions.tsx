import { useEffect, useState } from "react";
import { Empty } from "../panels/Empty.tsx";
import { Icon } from "../panels/Icon.tsx";
import { Working } from "../panels/Working.tsx";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { Besides } from "./Besides.tsx";
import { VersionItem } from "./VersionItem.tsx";

/** Earlier versions of the circuit, folded: they are read when they are asked for, and again after every edit. */
export function Versions() {
  const [isOpen, setIsOpen] = useState(false);
  return (
    <details
      className="circuit-part access"
      open={isOpen}
      onToggle={(event) => setIsOpen((event.target as HTMLDetailsElement).open)}
    >
      <summary>
        <Icon name="down" size={16} />
        <b>Earlier versions</b>
      </summary>
      {isOpen && <VersionList />}
    </details>
  );
}

function VersionList() {
  const { dispatch } = useAppStore();
  const version = useApp(({ open }) => open?.version);
  const versions = useApp(({ open }) => open?.versions);
  useEffect(() => {
    if (version !== undefined) dispatch({ do: "list-versions" });
  }, [version, dispatch]);
  if (!versions) return null;
  const { rows, besides, shown, trouble } = versions;
  if (trouble !== null)
    return (
      <p className="error" role="alert">
        <Icon name="note" size={16} />
        <span>
          <b>Not read.</b> {trouble}
        </span>
      </p>
    );
  if (rows === null) return <Working words="Reading the versions" />;
  const [present, ...earlier] = rows;
  if (!present || earlier.length === 0)
    return (
      <>
        <Besides rows={besides} />
        <Empty title="There is no earlier version yet">
          Every edit keeps one, such as before "move relay K2". None is lost when you bring one back.
        </Empty>
      </>
    );
  return (
    <>
      <Besides rows={besides} />
      <ol className="versions">
        {earlier.slice(0, shown).map((row) => (
          <VersionItem key={row.version} row={row} />
        ))}
      </ol>
      {earlier.length > shown && (
        <button type="button" className="button is-quiet is-low" onClick={() => dispatch({ do: "show-older" })}>
          Show older ones
        </button>
      )}
    </>
  );
}
