import type { Frame } from "./pixels.ts";

/** So many pictures make a background; twice as many are kept at most. */
const WANTED = 16;

/** Pictures spread evenly over a film whose length is not known before it has been seen. */
export class PicturesForBackground {
  readonly #kept: Frame[] = [];
  #every = 1;
  #seen = 0;

  /** Looks at the next picture, and keeps a copy of it where it is its turn. */
  look(frame: Frame): void {
    if (this.#seen++ % this.#every !== 0) return;
    this.#kept.push({ ...frame, rgb: frame.rgb.slice() });
    if (this.#kept.length < 2 * WANTED) return;
    this.#every *= 2;
    for (let i = WANTED - 1; i >= 0; i--) this.#kept.splice(2 * i + 1, 1);
  }

  /** What stood still: each byte's median. Null where no picture was seen. */
  background(): Frame | null {
    const kept = this.#kept;
    if (kept.length === 0) return null;
    const rgb = new Uint8Array(kept[0].rgb.length);
    const values = new Uint8Array(kept.length);
    for (let i = 0; i < rgb.length; i++) {
      for (let k = 0; k < kept.length; k++) values[k] = kept[k].rgb[i];
      rgb[i] = values.sort()[kept.length >> 1];
    }
    return { ...kept[0], rgb };
  }
}
