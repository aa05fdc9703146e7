interface Shown {
  readonly words: string;
  readonly act: () => void;
  /** Closes the menu it stands in. */
  readonly close: () => void;
}

/** Something that is done from a menu, which closes with it. */
export function MenuAct({ words, act, close }: Shown) {
  return (
    <button
      type="button"
      className="button is-low"
      onClick={() => {
        close();
        act();
      }}
    >
      {words}
    </button>
  );
}
