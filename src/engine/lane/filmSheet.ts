/**
 * Film thickness on the lane as a plain table, for charts and files. `um[row * columns + column]`;
 * column c is the centre of board c + 1 from the lane's right edge, row r is `firstFt + r * stepFt` from the foul line.
 */
export interface FilmSheet {
  readonly columns: 39;
  readonly rows: number;
  readonly firstFt: number;
  readonly stepFt: number;
  readonly um: readonly number[];
  readonly lengthFt: number;
  readonly volumeMl: number;
  /** Mean film of the middle boards over that of the outside boards. */
  readonly ratio: number;
  readonly meanUm: number;
}
