type Child = Node | string | null;
type Attributes = Readonly<Record<string, string | boolean | ((event: Event) => void)>>;

/**
 * An element of the page. A text attribute is set as it is, true as the empty text, false not at all; a function listens to
 * the event of its name. Text is only ever text: nothing here reads markup.
 */
export function build<N extends keyof HTMLElementTagNameMap>(
  name: N,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[N] {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (typeof value === "function") made.addEventListener(key, value);
    else if (value !== false) made.setAttribute(key, value === true ? "" : value);
  }
  made.append(...children.filter((child) => child !== null));
  return made;
}

/** Words a person typed, so that letters that run the other way turn nothing around them. */
export function typed(words: string): HTMLElement {
  return build("bdi", {}, words);
}

/** Sets an attribute that says yes or no in words, as `aria-pressed` does. */
export function say(element: Element, attribute: string, isSo: boolean): void {
  element.setAttribute(attribute, String(isSo));
}
