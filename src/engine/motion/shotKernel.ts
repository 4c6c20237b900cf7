/**
 * Many shots of the averaged model that are only scored, at once. The engine says what it wants of a kernel; entry files and workers may bring one made of
 * vectors. All of them give the same bits, so that who brings none is only slower. Single precision, steps of at most 2 ft, and friction tabulated over the
 * film map: docs/model/averaged-motion.md has the error against `runAveraged`, which stays the truth they are tested against.
 */
export interface ShotKernel {
  /** Friction times gravity in the cells of the film map, m/s²; whoever runs shots fills it first. */
  readonly grip: Float32Array;
  /**
   * Column by column ({@link SHOT_NUMBERS}), each {@link MOST_SHOTS} long: x, vx, vy, ux, uy at the foul line before a run, and where the shot ended after it;
   * then the outermost x on the way, and 1 where the ball reached the end. m, m/s.
   */
  readonly shots: Float32Array;
  /** Runs the first `count` shots, in place. */
  run(count: number, constants: ShotConstants): void;
}

/** What all shots of a run have in common. */
export interface ShotConstants {
  /** k = 1 + 1/κ. */
  readonly slipGain: number;
  /** ε². */
  readonly epsilon2: number;
  /** c_rr g/κ. */
  readonly resistance: number;
  /** 2 c_rr g/(1 + κ): what the square of the speed loses a metre in a straight roll. */
  readonly slowing: number;
  /** Distance at which the shots end, m. */
  readonly until: number;
  readonly longestStep: number;
}

export const MOST_SHOTS = 1024;
export const SHOT_NUMBERS = 7;
