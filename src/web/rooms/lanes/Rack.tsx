import { PIN_SPOTS_IN } from "#engine/pins/spots";
import { SHOT_NOTES } from "#words/en/rooms/lanes";

/** Pixels to an inch: neighbouring pins lie 12 in apart, so that a finger finds each. */
const SCALE = 4.6;
const [ACROSS_IN, DEEP_IN] = [36, 18 * Math.sqrt(3)];

interface RackProps {
  readonly pins: readonly number[];
  onChange(pins: readonly number[]): void;
}

/** The rack from above, the head pin nearest: a pin that stands is tapped. */
export function Rack({ pins, onChange }: RackProps) {
  const toggle = (pin: number) => onChange(pins.includes(pin) ? pins.filter((one) => one !== pin) : [...pins, pin]);
  return (
    <fieldset className="rack">
      <legend>{SHOT_NOTES.left}</legend>
      <div className="rack-pins">
        {PIN_SPOTS_IN.map(([x, y], i) => (
          <label key={`${x} ${y}`} className="rack-pin" style={{ left: SCALE * (x + ACROSS_IN / 2), top: SCALE * (DEEP_IN - y) }}>
            <input type="checkbox" aria-label={SHOT_NOTES.pin(i + 1)} checked={pins.includes(i + 1)} onChange={() => toggle(i + 1)} />
            <span aria-hidden="true">{i + 1}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
