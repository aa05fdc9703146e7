interface Shown {
  readonly words: string;
  /** From 0 to 1. */
  readonly done: number;
  readonly stop: () => void;
}

/** How far a piece of work is, and a way to give it up. */
export function Progress({ words, done, stop }: Shown) {
  return (
    <div className="progress">
      <p className="small" role="status">
        {words}: {Math.round(done * 100)} %
      </p>
      <progress value={done} aria-label={words} />
      <button type="button" className="button is-low" onClick={stop}>
        Stop
      </button>
    </div>
  );
}
