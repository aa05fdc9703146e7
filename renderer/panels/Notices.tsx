import { useCallback } from "react";
import { useApp, useAppStore } from "../state/AppContext.tsx";
import type { Notice } from "../state/state.ts";
import { Icon } from "./Icon.tsx";
import { useLeaving } from "./useLeaving.ts";

/** How long a note that tells of a success stays, and one that offers something, milliseconds. */
const STAYS_MS = 6000;
const OFFER_STAYS_MS = 15_000;

/** Sentences to the person: under the bar, in the middle. An error stays until it is put away or out of date. */
export function Notices() {
  const notices = useApp((state) => state.notices);
  return (
    <section className="notices" aria-label="Notes" aria-live="polite">
      {notices.map((notice) => (
        <NoticeCard key={notice.id} notice={notice} />
      ))}
    </section>
  );
}

function NoticeCard({ notice }: { readonly notice: Notice }) {
  const { dispatch } = useAppStore();
  const { id, title, words, isError, isUntilKept, offers = [] } = notice;
  const putAway = useCallback((): void => dispatch({ do: "put-away", notice: id }), [dispatch, id]);
  const stay = useLeaving(isError || isUntilKept ? null : offers.length > 0 ? OFFER_STAYS_MS : STAYS_MS, putAway);
  return (
    <div {...stay} className={isError ? "card notice is-error" : "card notice"} role={isError ? "alert" : undefined}>
      <Icon name={isError ? "note" : "tick"} size={16} />
      <p>
        <b>
          <bdi>{title}</bdi>
        </b>{" "}
        <bdi>{words}</bdi>
      </p>
      {offers.map((offer) => (
        <button
          key={offer.words}
          type="button"
          className="button is-quiet is-low"
          onClick={() => {
            dispatch(offer.action);
            putAway();
          }}
        >
          {offer.words}
        </button>
      ))}
      <button type="button" className="icon-button is-small" aria-label="Put away" onClick={putAway}>
        <Icon name="close" size={16} />
      </button>
    </div>
  );
}
