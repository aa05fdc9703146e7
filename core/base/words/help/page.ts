/** A paragraph, a list, or words with what they mean. A key stands as `{undo}`, by the name of its row in the table of keys. */
export type HelpBlock =
  | string
  | readonly string[]
  | { readonly terms: readonly (readonly [term: string, meaning: string])[] };

/** One page of the help. */
export interface HelpPage {
  readonly title: string;
  /** Further words under which it is sought. */
  readonly also?: string;
  readonly blocks: readonly HelpBlock[];
}
