/** Shown while something takes longer than a moment; the style sheet keeps it hidden for the first 300 ms. */
export function Working({ words }: { readonly words: string }) {
  return (
    <div className="working" role="status">
      <p className="small">{words}</p>
      <i />
      <i />
      <i />
    </div>
  );
}
