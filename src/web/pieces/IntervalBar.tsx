interface IntervalBarProps {
  /** Shares of the scale, 0 to 1. */
  readonly low: number;
  readonly value: number;
  readonly high: number;
  /** What was said beforehand, as a ring. */
  readonly said?: number | undefined;
  /** All of it in words. */
  readonly name: string;
}

const LONG = 100;
/** Room for half a ring on either side. */
const EDGE = 4;

/** An interval on its scale, the value as a tick. */
export function IntervalBar({ low, value, high, said, name }: IntervalBarProps) {
  const at = (share: number) => EDGE + LONG * share;
  return (
    <svg className="interval-bar" viewBox={`0 0 ${LONG + 2 * EDGE} 14`} role="img" aria-label={name}>
      <line x1={at(0)} x2={at(1)} y1={7} y2={7} className="interval-scale" />
      <line x1={at(low)} x2={at(high)} y1={7} y2={7} className="interval-span" />
      <line x1={at(value)} x2={at(value)} y1={2} y2={12} className="interval-value" />
      {said !== undefined && <circle cx={at(said)} cy={7} r={3.4} className="interval-said" />}
    </svg>
  );
}
