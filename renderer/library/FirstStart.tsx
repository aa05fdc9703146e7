import { choosePrinted } from "../printed/choosePrinted.ts";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import { isLesson } from "../words/library.ts";
import { Deleted } from "./Deleted.tsx";
import { LibraryPlace } from "./LibraryPlace.tsx";
import { Samples } from "./Samples.tsx";
import { FaultPicture, ProbePicture, ThrowPicture } from "./TeachPictures.tsx";

const TEACH = [
  {
    title: "Throw",
    words: "Click a switch. Every wire shows what it carries, and which way.",
    Picture: ThrowPicture,
  },
  {
    title: "Break",
    words: "Put a fault in. What differs from the good circuit is marked, wire by wire.",
    Picture: FaultPicture,
  },
  {
    title: "Probe",
    words: "Say what fails and what works. Print the order: which pin, which leads, what to expect.",
    Picture: ProbePicture,
  },
];

/** What the program is for, and the samples to try it on. */
export function FirstStart() {
  const { dispatch } = useAppStore();
  const hasLessons = useApp(({ shelf }) => shelf.samples.some(isLesson));
  const isShared = useApp(({ shelf }) => shelf.sharedAs !== null);
  return (
    <>
      <section>
        <div className="hero-row">
          <h2 className="hero">See where every wire gets its feed and its ground</h2>
          {isShared && (
            <p>
              Nothing is in this library yet <LibraryPlace />
            </p>
          )}
          <div className="hero-acts">
            <button type="button" className="button is-main" onClick={() => showTiles("vehicles")}>
              Open a sample
            </button>
            <button
              type="button"
              className="button"
              onClick={() => choosePrinted((printed) => dispatch({ do: "new-circuit", printed }))}
            >
              Redraw a printed page
            </button>
            {hasLessons && (
              <button type="button" className="button" onClick={() => showTiles("lessons")}>
                Start a lesson
              </button>
            )}
            <button
              type="button"
              className="button is-quiet"
              onClick={() => dispatch({ do: "open-help", topic: "before" })}
            >
              Before you probe
            </button>
          </div>
        </div>
        <ol className="teach">
          {TEACH.map(({ title, words, Picture }, index) => (
            <li key={title}>
              <Picture />
              <h3>
                <span className="knot figures">{index + 1}</span>
                {title}
              </h3>
              <p>{words}</p>
            </li>
          ))}
        </ol>
      </section>
      <div className="library-samples">
        <Samples
          title="Start from a sample"
          note="nothing can break: it is as it came when you open it again"
          are="vehicles"
        />
        <Samples title="Start a lesson" note="scenes to show, questions to ask, faults to hide" are="lessons" />
      </div>
      <Deleted />
    </>
  );
}

/** Brings samples or lessons into sight, the keys on the first of them. */
function showTiles(are: "vehicles" | "lessons"): void {
  const tiles = document.querySelector(`.samples.are-${are}`);
  tiles?.scrollIntoView({ block: "start" });
  tiles?.querySelector("button")?.focus();
}
