/** A step that brings the tables of a library to their next form. Applied once, in one transaction with its name. */
export interface Upgrade {
  readonly name: string;
  readonly sql: string;
}
