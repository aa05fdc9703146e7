import { useApp } from "../state/AppContext.tsx";

/** Says what the last edit changed, to whoever listens and does not look. */
export function LiveRegion() {
  const said = useApp((state) => state.said);
  return (
    <p className="unseen" role="status" aria-live="polite" data-region="said">
      {said}
    </p>
  );
}
