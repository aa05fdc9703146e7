/** The mark of the program: a line with its lead. */
export function Mark() {
  return (
    <svg className="mark" width="28" height="28" viewBox="0 0 28 28" aria-hidden="true" fill="none">
      <path d="M5 7h18" stroke="var(--ink)" strokeWidth="2.2" strokeLinecap="round" />
      <path d="M14 7v11M10.5 11h7M11.5 14.5h5" stroke="var(--accent)" strokeWidth="2.2" strokeLinecap="round" />
      <path d="M14 17l3 5.2L14 25l-3-2.8z" fill="var(--accent)" />
    </svg>
  );
}
