/** Keeps what has the keys from lying under the drawing, where that stays in sight while the page below it scrolls. */
export function keepClear(bench: HTMLElement): void {
  const root = document.documentElement;
  new ResizeObserver(() => root.style.setProperty("--bench", `${bench.offsetHeight}px`)).observe(bench);
}
