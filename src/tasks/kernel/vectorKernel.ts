import { CELL_X, CELL_Y, COLUMNS, FIRST_X, ROWS } from "#engine/lane/filmMap";
import { LEAST_OF_SLIP, SHORTEST, SLOWEST } from "#engine/motion/averaged";
import { bringKernel } from "#engine/motion/manyShots";
import { ROLL_SLIP } from "#engine/motion/phases";
import { MOST_SHOTS, SHOT_NUMBERS, type ShotKernel } from "#engine/motion/shotKernel";
import { KERNEL_BASE64 } from "./kernelBytes.ts";

/** The part of the platform's WebAssembly that is used; browsers and Node have it. */
declare const WebAssembly: {
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Instance: new (module: object) => { readonly exports: unknown };
};
declare const atob: (base64: string) => string;

interface Exports {
  readonly memory: { readonly buffer: ArrayBuffer };
  gripAt(): number;
  shotsAt(): number;
  run(count: number, ...constants: readonly number[]): void;
}

/** For entry files and workers: from here on the engine's many shots run on vectors, where there are any. */
export function bringVectorKernel(): void {
  const kernel = vectorKernel();
  if (kernel !== null) bringKernel(kernel);
}

/** The kernel made of vectors; null where the machine has none, or the page's policy forbids it. */
export function vectorKernel(): ShotKernel | null {
  const loaded = instance();
  if (loaded === null) return null;
  const { memory, gripAt, shotsAt, run } = loaded;
  return {
    grip: new Float32Array(memory.buffer, gripAt(), COLUMNS * ROWS),
    shots: new Float32Array(memory.buffer, shotsAt(), SHOT_NUMBERS * MOST_SHOTS),
    run: (count, { slipGain, epsilon2, resistance, slowing, until, longestStep }) =>
      run(
        count,
        slipGain,
        epsilon2,
        resistance,
        slowing,
        until,
        longestStep,
        FIRST_X,
        1 / CELL_X,
        1 / CELL_Y,
        LEAST_OF_SLIP,
        SHORTEST,
        SLOWEST,
        ROLL_SLIP ** 2,
      ),
  };
}

function instance(): Exports | null {
  try {
    const bytes = Uint8Array.from(atob(KERNEL_BASE64), (letter) => letter.charCodeAt(0));
    return new WebAssembly.Instance(new WebAssembly.Module(bytes)).exports as Exports;
  } catch {
    // Too old for vectors, or not allowed to compile: the plain kernel gives the same bits, only later.
    return null;
  }
}
