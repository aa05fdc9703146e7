/** Why something was not done, beside what asked for it; nothing where it was. */
export function Trouble({ words, id }: { readonly words: string | null; readonly id?: string }) {
  if (words === null) return null;
  return (
    <p className="editor-trouble small" id={id} role="alert">
      {words}
    </p>
  );
}
