/** A name with a sign in it at which a line could break: X4-6, RD/YE, 4-6. */
const NAMES = /([^\s(]*[-/][^\s,;)]+)/;

/** A sentence in which no name of a point and no colour is broken over two lines. */
export function Unparted({ words }: { readonly words: string }) {
  // Every second piece is a name.
  return words.split(NAMES).map((piece, at) =>
    at % 2 === 0 ? (
      piece
    ) : (
      <span key={at} className="wall-together">
        {piece}
      </span>
    ),
  );
}
