/**
 * How far a figure can be trusted, best first: seen in its document; a sheet's figure seen in someone else's document;
 * worked out from published figures; used in the trade without a document; recalled and still to be confirmed.
 */
export const STANDINGS = ["published", "quoted", "derived", "practice", "memory"] as const;
export type Standing = (typeof STANDINGS)[number];

/** Where a figure comes from. `document` names title, number and year as far as they are known. */
export interface Source {
  readonly standing: Standing;
  readonly document: string;
}

/** A figure recalled, not looked up: a default of a model, never a check. */
export const MEMORY: Source = { standing: "memory", document: "from memory" };

/** A figure of the trade for which no document was found. */
export const PRACTICE: Source = { standing: "practice", document: "common practice, no source" };

/** A figure seen in this document. */
export function published(document: string): Source {
  return { standing: "published", document };
}

/** A data sheet's or standard's figure, seen quoted elsewhere. */
export function quoted(document: string): Source {
  return { standing: "quoted", document };
}

/** A figure worked out from what this document gives. */
export function derived(document: string): Source {
  return { standing: "derived", document };
}

/** The least trusted of several sources; a figure made of several is no better than that one. */
export function weakest(first: Source, ...others: readonly Source[]): Source {
  return others.reduce(
    (worst, source) => (STANDINGS.indexOf(source.standing) > STANDINGS.indexOf(worst.standing) ? source : worst),
    first,
  );
}
