/**
 * A finish as the plan names it: the last abrasive, and polish over it or not. Written `2000` or `1000 + polish`.
 * The number follows the trade's pad numbering; which grading system stands behind it is the abrasive's own record.
 */
export interface Finish {
  readonly number: number;
  readonly polished: boolean;
}
