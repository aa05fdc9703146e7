/** A page out of sight paints nothing; so long is waited for it, milliseconds. */
const LATEST_MS = 2_000;

/** Resolves once the page has shown something, or at the latest after a while, so that nothing else delays that. */
export function firstPaint(): Promise<void> {
  return new Promise((seen) => {
    new PerformanceObserver((list, observer) => {
      if (list.getEntriesByName("first-contentful-paint").length === 0) return;
      observer.disconnect();
      seen();
    }).observe({ type: "paint", buffered: true });
    setTimeout(seen, LATEST_MS);
  });
}
