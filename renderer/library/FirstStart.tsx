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
  return (
    <>
      <section>
        <h2 className="hero">See where every wire gets its feed and its ground</h2>
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
      <Samples title="Start from a sample" note="nothing can break: it is as it came when you open it again" />
      <Deleted />
    </>
  );
}
