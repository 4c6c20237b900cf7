import type { Message } from "#engine/message";

/** The figures of a message, read by name and kind. A message without a figure that its sentence needs is our fault, and says so. */
export class Params {
  readonly #message: Message;

  constructor(message: Message) {
    this.#message = message;
  }

  /** @throws {TypeError} if there is no finite number of that name */
  number(name: string): number {
    const value = this.#message.params[name];
    if (typeof value !== "number" || !Number.isFinite(value)) throw new TypeError(`${this.#message.id} has no number "${name}"`);
    return value;
  }

  /** @throws {TypeError} if there is no text of that name */
  text(name: string): string {
    const value = this.#message.params[name];
    if (typeof value !== "string") throw new TypeError(`${this.#message.id} has no text "${name}"`);
    return value;
  }

  /** The number of that name, or null where the message does without it. */
  optionalNumber(name: string): number | null {
    return name in this.#message.params ? this.number(name) : null;
  }

  /** The text of that name, or null where the message does without it. */
  optionalText(name: string): string | null {
    return name in this.#message.params ? this.text(name) : null;
  }
}

/** What a catalogue holds for every message id: how its sentence is made from its figures. */
export type Sentence = (params: Params) => string;
