import { useApp } from "../state/AppContext.tsx";
import { isLesson } from "../words/library.ts";
import { Deleted } from "./Deleted.tsx";
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
  const hasLessons = useApp(({ shelf }) => shelf.samples.some(isLesson));
  return (
    <>
      <section>
        <div className="hero-row">
          <h2 className="hero">See where every wire gets its feed and its ground</h2>
          {hasLessons && (
            <button type="button" className="button" onClick={showLessons}>
              Start a lesson
            </button>
          )}
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

/** Brings the lessons into sight, the keys on the first of them. */
function showLessons(): void {
  const lessons = document.querySelector(".samples.are-lessons");
  lessons?.scrollIntoView({ block: "start" });
  lessons?.querySelector("button")?.focus();
}
