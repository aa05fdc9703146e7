import { useKeyOf } from "../keys/useKeyOf.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";

/** Where the class sees something, and the acts that begin, blank and end that. */
export function ClassWhere() {
  const { dispatch } = useAppStore();
  const keyOf = useKeyOf();
  const { where, isBlank } = useApp(({ classroom }) => classroom);
  const blank = (): void => dispatch({ do: "class", classroom: { isBlank: !isBlank } });
  return (
    <header className="view-head">
      <h2 aria-live="polite">{saidOf(where !== null, isBlank)}</h2>
      <div className="class-acts">
        {where === null ? (
          <>
            <button
              type="button"
              className="button is-main is-low"
              onClick={() => dispatch({ do: "open-class", where: "window" })}
            >
              Open a class window
            </button>
            <button
              type="button"
              className="button is-low"
              title={`${keyOf("class")}, where there is no second screen`}
              onClick={() => dispatch({ do: "open-class", where: "here" })}
            >
              Over this whole screen
            </button>
          </>
        ) : (
          <>
            <button type="button" className="button is-low" aria-pressed={isBlank} onClick={blank}>
              Blank
            </button>
            <button type="button" className="button is-low" onClick={() => dispatch({ do: "close-class" })}>
              Close the class window
            </button>
          </>
        )}
      </div>
      {where === null && (
        <p className="small">
          Draw the window to the screen of the class. Notes, the next scene and faults stay in this one.
        </p>
      )}
    </header>
  );
}

function saidOf(isShown: boolean, isBlank: boolean): string {
  if (!isShown) return "The class sees nothing yet";
  return isBlank ? "The class sees a blank screen" : "The class sees the drawing";
}
