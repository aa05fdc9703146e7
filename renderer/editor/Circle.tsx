interface Shown {
  readonly row: number;
  readonly column: number;
  /** The circle in words. */
  readonly words: string;
  readonly isJoined: boolean;
  readonly isChosen: boolean;
  /** True for those that the chosen one of the row hangs together with. */
  readonly isPartner: boolean;
  /** True for the one that Tab comes to. */
  readonly isStop: boolean;
  readonly onChoose: () => void;
  readonly onFocus: () => void;
}

/** One circle of the table: filled where its terminal is joined with another, open where it is alone. */
export function Circle({ row, column, words, isJoined, isChosen, isPartner, isStop, onChoose, onFocus }: Shown) {
  const look = `${isJoined ? "is-joined" : ""} ${isChosen ? "is-chosen" : ""} ${isPartner ? "is-partner" : ""}`;
  return (
    <button
      type="button"
      className={`chart-circle ${look}`}
      data-row={row}
      data-column={column}
      aria-label={words}
      aria-pressed={isChosen}
      tabIndex={isStop ? 0 : -1}
      onClick={onChoose}
      onFocus={onFocus}
    />
  );
}
