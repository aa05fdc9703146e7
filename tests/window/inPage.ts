/*
 * What is looked at in the page itself: these run there, and may use nothing of this file.
 */

/** What reaches beyond the right edge of the page, or makes it scroll sideways. What scrolls by itself, and drawings, may. */
export function beyondTheEdge(): readonly string[] {
  const across = document.documentElement.clientWidth;
  const found: string[] = [];
  if (document.documentElement.scrollWidth > across)
    found.push(`the page is ${document.documentElement.scrollWidth} wide`);
  const mayScroll = "svg, canvas, .sheet-canvas, .unseen, .strip, .views, .print-pages, .view-scroll table, .chart";
  for (const each of document.querySelectorAll<HTMLElement>("#app *")) {
    if (each.closest(mayScroll)) continue;
    const { right, width } = each.getBoundingClientRect();
    const { visibility, overflowX } = getComputedStyle(each);
    if (width === 0 || visibility === "hidden") continue;
    const name = `${each.tagName.toLowerCase()}.${each.className} ${(each.textContent ?? "").slice(0, 30)}`;
    if (right > across + 1) found.push(`${Math.round(right)}: ${name}`);
    const isScrolled = /auto|scroll/.test(overflowX) && each.scrollWidth > each.clientWidth + 1;
    if (isScrolled && !each.querySelector(mayScroll)) found.push(`scrolls sideways: ${name}`);
  }
  return found;
}

/** Sets lines, letters and words as far apart as a person may wish them (WCAG 2.2, 1.4.12), or as they were. */
export function setApart(isApart: boolean): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(`* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
    p { margin-bottom: 2em !important; }`);
  document.adoptedStyleSheets = isApart ? [sheet] : [];
}

/**
 * What can have the keys and does not show it by a line of at least 2 px, or lies under something else whole once it has them. A
 * dialog that is open keeps the rest from having them. The last press must have been a key.
 */
export async function badlyFocused(): Promise<readonly string[]> {
  const all = "a[href], button, input, select, textarea, summary, [tabindex='0']";
  const dialog = document.querySelector("dialog[open]");
  const had = document.activeElement;
  const found: string[] = [];
  const isLined = (element: Element | null): boolean => {
    if (!element) return false;
    const { outlineStyle, outlineWidth } = getComputedStyle(element);
    return outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2;
  };
  for (const each of (dialog ?? document).querySelectorAll<HTMLElement>(all)) {
    if (each.matches(":disabled") || !each.checkVisibility({ visibilityProperty: true })) continue;
    each.focus();
    // What closes once the keys have left it goes before the next.
    await new Promise((next) => setTimeout(next));
    if (document.activeElement !== each) continue;
    const name = each.outerHTML.slice(0, 120);
    const field = each.closest(".field, .tick, .toggle, .step, label");
    if (!isLined(each) && !isLined(field) && !isLined(each.parentElement)) found.push(`no line: ${name}`);
    const { left, right, top, bottom } = each.getBoundingClientRect();
    const isSeen = [0.15, 0.5, 0.85].some((share) =>
      [0.15, 0.5, 0.85].some((down) => {
        const on = document.elementFromPoint(left + (right - left) * share, top + (bottom - top) * down);
        return on !== null && (each.contains(on) || on.contains(each) || field?.contains(on) === true);
      }),
    );
    if (!isSeen) found.push(`covered up: ${name}`);
  }
  if (had instanceof HTMLElement) had.focus();
  return found;
}
