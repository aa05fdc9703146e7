/** Gives the keys to what opens a circuit or a sample on the page, by its key; to the search where it is not there. */
export function focusOpener(key: string | null): void {
  const opener = key === null ? null : document.querySelector<HTMLElement>(`[data-opens="${CSS.escape(key)}"]`);
  const search = document.querySelector<HTMLElement>(".library-search input");
  (opener ?? search)?.focus();
}
