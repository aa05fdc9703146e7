import { useLayoutEffect, useRef } from "react";

interface Shown {
  /** SVG as text, made by the program itself. */
  readonly text: string;
  readonly className: string;
  readonly isHidden?: boolean;
}

/** A drawing that came as text. It is read as XML, in which nothing runs. Decoration: words beside it say the same. */
export function SvgText({ text, className, isHidden = false }: Shown) {
  const place = useRef<HTMLSpanElement>(null);
  useLayoutEffect(() => {
    const { documentElement } = new DOMParser().parseFromString(text, "image/svg+xml");
    place.current?.replaceChildren(document.importNode(documentElement, true));
  }, [text]);
  return <span className={className} ref={place} aria-hidden="true" hidden={isHidden} />;
}
