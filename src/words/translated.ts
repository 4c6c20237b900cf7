/** The shape of a piece of a catalogue in another language: every text and every sentence, whatever it says. A missing one does not compile. */
export type Translated<T> = T extends string
  ? string
  : T extends (...given: infer Given) => infer Said
    ? (...given: Given) => Translated<Said>
    : T extends readonly (infer One)[]
      ? readonly Translated<One>[]
      : T extends object
        ? { readonly [Key in keyof T]: Translated<T[Key]> }
        : T;
