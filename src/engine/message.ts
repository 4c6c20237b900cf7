/**
 * The engine writes no sentences. It says *which* thing is to be said, with the figures that belong to it;
 * `words/` turns that into text, one catalogue a language.
 */
export interface Message<Id extends string = string> {
  readonly id: Id;
  readonly params: Readonly<Record<string, string | number>>;
}
