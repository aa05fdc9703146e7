/** Whose word comes first. */
export function Deference() {
  return <p className="deference">The vehicle maker’s procedure, local codes and licensed practice come first.</p>;
}
