import { useApp } from "../state/AppContext.tsx";

/** Which library is open: the one of this machine, or one that several share. */
export function LibraryPlace() {
  const sharedAs = useApp(({ shelf }) => shelf.sharedAs);
  return (
    <span className="caption library-place">
      {sharedAs === null ? (
        "on this machine"
      ) : (
        <>
          shared: <bdi>{sharedAs}</bdi>
        </>
      )}
    </span>
  );
}
