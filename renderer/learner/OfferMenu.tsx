import { type KeyboardEvent, useMemo } from "react";
import { sentence } from "../../core/base/words.ts";
import type { Circuit } from "../../core/circuit/circuit.ts";
import { pointAt } from "../../core/circuit/points.ts";
import { placeOf, reachOf, testPointsOf } from "../../core/diagnose/testPoint.ts";
import { leadPlace } from "../../core/lesson/leadPlace.ts";
import { moveText } from "../../core/lesson/moveText.ts";
import { moveWords } from "../../core/lesson/moveWords.ts";
import { type Offer, offersAt } from "../../core/lesson/offers.ts";
import type { Pixel } from "../canvas/viewport.ts";
import { Caution } from "../panels/Caution.tsx";
import { ConnectorFace } from "../panels/ConnectorFace.tsx";
import { useCardAt } from "../panels/useCardAt.ts";
import { useAppStore } from "../state/AppContext.tsx";
import type { Thing } from "../state/state.ts";
import { minutesText } from "../words/figures.ts";
import { LEARNER_WORDS as SAY } from "../words/learner.ts";
import { partTitle } from "../words/part.ts";
import { useLearning } from "./useLearning.ts";
import { useMoves } from "./useMoves.ts";

interface Shown {
  readonly thing: Thing;
  /** Where it was asked for, client pixels. */
  readonly at: Pixel;
  readonly close: () => void;
}

/** What can be done at a thing of the drawing, each with its minutes, or why not yet. Escape and a press outside close it. */
export function OfferMenu({ thing, at, close }: Shown) {
  const attempt = useLearning((learning) => learning.attempt);
  const black = useLearning(({ sight }) => sight.black);
  const { circuit } = attempt.exercise;
  const { card, style } = useCardAt(at, firstButton, close);
  const offers = useMemo(() => offersAt(attempt, thing, black), [attempt, thing, black]);
  const possible = offers.filter(({ refusal }) => refusal === null);
  return (
    <div
      ref={card}
      className="card thing-menu offers"
      role="dialog"
      tabIndex={-1}
      aria-label={`What can be done at ${thing.id}`}
      style={style}
      onKeyDown={(event) => walk(event, card.current, close)}
    >
      <OfferHead circuit={circuit} thing={thing} />
      <ul className="menu">
        {possible.map((offer) => (
          <OfferRow key={moveText(offer.move)} circuit={circuit} offer={offer} close={close} />
        ))}
        {thing.is === "point" && <BlackLead point={leadPlace(circuit, thing.id, attempt.condition)} close={close} />}
      </ul>
      <HeldBack circuit={circuit} offers={offers} />
      {offers.length === 0 && <p className="small offers-none">{SAY.nothingHere}</p>}
      {cautionsAt(circuit, thing).map((caution) => (
        <Caution key={caution}>{caution}</Caution>
      ))}
    </div>
  );
}

function buttonsIn(card: HTMLElement | null): readonly HTMLButtonElement[] {
  return [...(card?.querySelectorAll<HTMLButtonElement>("button:not(:disabled)") ?? [])];
}

function firstButton(card: HTMLElement): HTMLElement | undefined {
  return buttonsIn(card)[0];
}

/** Arrow keys go along what can be done. */
function walk(event: KeyboardEvent, card: HTMLElement | null, close: () => void): void {
  if (event.key === "Escape") {
    event.stopPropagation();
    close();
    return;
  }
  const step = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0;
  if (step === 0) return;
  event.preventDefault();
  const buttons = buttonsIn(card);
  const at = buttons.indexOf(document.activeElement as HTMLButtonElement);
  buttons[(at + step + buttons.length) % buttons.length]?.focus();
}

function OfferHead({ circuit, thing }: { readonly circuit: Circuit; readonly thing: Thing }) {
  const part = circuit.parts.find(({ id }) => thing.is === "part" && id === thing.id);
  const wire = circuit.wires.find(({ id }) => thing.is === "wire" && id === thing.id);
  const point = thing.is === "point" ? pointAt(circuit, thing.id) : undefined;
  const where = circuit.reach[thing.id]?.where ?? (thing.is === "wire" ? undefined : reachOf(circuit, thing.id).where);
  return (
    <header className="menu-head">
      <h2>
        {thing.id} {part && <span>{partTitle(circuit, part)}</span>}
      </h2>
      {wire && (
        <p className="small">
          {wire.from} to {wire.to}
        </p>
      )}
      {where !== undefined && <p className="small">{where}</p>}
      {point?.kind === "cavity" && <ConnectorFace circuit={circuit} point={thing.id} />}
    </header>
  );
}

interface Row {
  readonly circuit: Circuit;
  readonly offer: Offer;
  readonly close: () => void;
}

function OfferRow({ circuit, offer: { move, minutes }, close }: Row) {
  const make = useMoves();
  return (
    <li>
      <button
        type="button"
        className="menu-item offer"
        data-move={moveText(move)}
        onClick={() => {
          close();
          make(move);
        }}
      >
        <span>{moveWords(circuit, move)}</span>
        <span className="menu-end figures">{minutesText(minutes)}</span>
      </button>
    </li>
  );
}

/** What cannot be done there as things stand, each reason once; what only waits for trim, which stands above, together. */
function HeldBack({ circuit, offers }: { readonly circuit: Circuit; readonly offers: readonly Offer[] }) {
  const reasons = new Map<string, string[]>();
  for (const { move, refusal } of offers) {
    if (!refusal) continue;
    const why = refusal.code === "move-trim" ? "" : sentence(refusal);
    reasons.set(why, [...(reasons.get(why) ?? []), moveWords(circuit, move)]);
  }
  return [...reasons].map(([why, moves]) => (
    <div key={why} className="offer-why">
      {why !== "" && <p className="small">{why}</p>}
      <p className="caption">{why === "" ? SAY.behindTrim(moves) : SAY.heldBack(moves)}</p>
    </div>
  ));
}

/** The black lead lies at battery minus until it is put elsewhere, which costs nothing before something is read. */
function BlackLead({ point, close }: { readonly point: string; readonly close: () => void }) {
  const { dispatch } = useAppStore();
  const black = useLearning(({ sight }) => sight.black);
  const isHere = black === point;
  return (
    <li>
      <button
        type="button"
        className="menu-item offer"
        onClick={() => {
          close();
          dispatch({ do: "learner-sees", sees: { black: isHere ? "battery -" : point } });
        }}
      >
        {isHere ? SAY.blackBack : SAY.blackHere}
      </button>
    </li>
  );
}

/** What to mind there: of the place itself, and of the trim in front of it. */
function cautionsAt(circuit: Circuit, { is, id }: Thing): readonly string[] {
  if (is === "wire") return [];
  const at = testPointsOf(circuit).find(({ point }) => point === id) ?? placeOf(circuit, id);
  const trim = circuit.access.find((group) => group.id === at.access)?.cautions ?? [];
  return [...new Set([...at.cautions, ...trim])];
}
