/** odex ships no types for its class; what the test uses of it. */
declare module "odex" {
  export class Solver {
    constructor(dimension: number);
    absoluteTolerance: number;
    relativeTolerance: number;
    maxStepSize: number;
    maxSteps: number;
    solve(equations: (t: number, state: number[]) => number[], from: number, start: number[], until: number): { readonly y: number[] };
  }
}
