import { useEffect, useRef } from "react";

/** Why something was not done, beside what asked for it and brought into sight; nothing where it was. */
export function Trouble({ words, id }: { readonly words: string | null; readonly id?: string }) {
  const said = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (words !== null) said.current?.scrollIntoView({ block: "nearest" });
  }, [words]);
  if (words === null) return null;
  return (
    <p ref={said} className="editor-trouble small" id={id} role="alert">
      {words}
    </p>
  );
}
