import { useCallback, useEffect, useMemo, useRef } from "react";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { placesOf } from "../../core/paper/places.ts";
import { useApp } from "../state/AppContext.tsx";
import { minutesText } from "../words/figures.ts";
import { movedIn } from "../words/step.ts";
import type { OrderAnswer } from "../workers/question.ts";
import { Empty } from "./Empty.tsx";
import { Icon } from "./Icon.tsx";
import { NothingToRead } from "./NothingToRead.tsx";
import { PlacePhoto } from "./PlacePhoto.tsx";
import { StepRow } from "./StepRow.tsx";

interface Shown {
  readonly circuit: Circuit;
  readonly answer: OrderAnswer;
  readonly isOld: boolean;
}

/** The rows of the order, grouped by place: name left, minutes to open it right. */
export function StepList({ circuit, answer, isOld }: Shown) {
  const { order, states } = answer;
  const places = useMemo(() => placesOf(circuit, order), [circuit, order]);
  const moved = useMemo(() => movedIn(order), [order]);
  const active = useApp(({ open }) => open?.step ?? null);
  const list = useRef<HTMLDivElement>(null);
  const wantsField = useRef(false);
  const onTaken = useCallback(() => {
    wantsField.current = true;
  }, []);
  const shown = useRef(active);

  useEffect(() => {
    if (shown.current === active) return;
    shown.current = active;
    list.current?.querySelector(".step.is-active")?.scrollIntoView({ block: "nearest" });
  }, [active]);

  // Whoever typed a reading goes on typing, and whoever chose a complaint begins: the field of the row is theirs once it
  // is there.
  useEffect(() => {
    const focused = document.activeElement;
    if (focused?.matches(".reading-field input") || focused === list.current?.closest(".view"))
      wantsField.current = true;
    if (!wantsField.current || isOld) return;
    wantsField.current = false;
    list.current?.querySelector<HTMLInputElement>(".reading-field input")?.focus();
  }, [isOld]);

  if (order.suspects.length === 0)
    return (
      <Empty title="No single fault of this circuit does that">
        With what was seen, no one defect in the drawing explains the complaint. Look again at the check, at what is
        ticked under What works, or for something that is not drawn.
      </Empty>
    );
  if (order.steps.length === 0) return <NothingToRead />;
  return (
    <div className={isOld ? "is-old" : undefined} ref={list}>
      {places.map((place, index) => (
        <section className="place" key={index}>
          <h3 className="place-name">
            <span>{place.group?.label ?? "Nothing to take off"}</span>
            {place.minutes > 0 && (
              <span className="place-minutes figures">
                <Icon name="minutes" size={16} />
                {minutesText(place.minutes)}
              </span>
            )}
          </h3>
          {place.group?.photo && !place.isAgain && <PlacePhoto photo={place.group.photo} of={place.group.label} />}
          <ol className="steps">
            {place.steps.map((step) => (
              <StepRow
                key={step.number}
                circuit={circuit}
                step={step}
                states={states[step.number - 1] ?? []}
                moved={moved}
                steps={order.steps}
                detour={step === order.steps[0] ? null : (order.detours[step.number - 1] ?? null)}
                onTaken={onTaken}
              />
            ))}
          </ol>
        </section>
      ))}
    </div>
  );
}
