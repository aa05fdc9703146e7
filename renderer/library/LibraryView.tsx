import { useEffect, useRef } from "react";
import { useApp } from "../state/AppContext.tsx";
import { CircuitList } from "./CircuitList.tsx";
import { Deference } from "./Deference.tsx";
import { FirstStart } from "./FirstStart.tsx";
import { LibraryBar } from "./LibraryBar.tsx";
import { Samples } from "./Samples.tsx";

/** The library: circuits and samples; on a first start, what the program is for. */
export function LibraryView() {
  const isRead = useApp(({ shelf }) => shelf.isRead);
  const trouble = useApp(({ shelf }) => shelf.trouble);
  const isFirst = useApp(
    ({ shelf }) => shelf.isRead && shelf.count === 0 && shelf.search === "" && shelf.trouble === null,
  );
  const wasOpen = useApp(({ brought }) => brought > 0);
  const body = useRef<HTMLElement>(null);
  useEffect(() => {
    // Whoever comes back from a circuit finds it first in the list; what had the focus there is gone.
    if (!wasOpen || !isRead || document.activeElement !== document.body) return;
    body.current?.querySelector<HTMLElement>(".entry-open, .tile")?.focus({ preventScroll: true });
  }, [wasOpen, isRead]);
  return (
    <div className="library">
      <LibraryBar />
      <main ref={body} className={isFirst ? "library-body is-first" : "library-body"}>
        {isFirst ? (
          <FirstStart />
        ) : (
          isRead && (
            <div className="library-columns">
              <CircuitList trouble={trouble} />
              <Samples title="Samples" note="open one and throw its switches" />
            </div>
          )
        )}
        <Deference />
      </main>
    </div>
  );
}
