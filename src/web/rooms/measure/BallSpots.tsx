import { useMemo } from "react";
import type { Ball } from "#contract/records/ball";
import type { Bowler } from "#contract/records/bowler";
import { BALL_RADIUS, measureBack, measureFront } from "#drawing/measureBall";
import type { Point } from "#drawing/svg";
import type { Finish } from "#engine/surface/finish";
import { OFF_TRACK, type Place, TRACK } from "#engine/surface/readings/places";
import { MEASURE, PLACE_LABELS } from "#words/en/rooms/measure";
import type { Way } from "../../measured/entries.ts";
import { Picture } from "../../pieces/Picture.tsx";
import { spotsOf, trackOn } from "./places.ts";

interface SpotsProps {
  readonly ball: Ball;
  readonly bowler: Bowler | null;
  readonly finish: Finish;
  /** Places in view, the six sides and whatever else was asked for. */
  readonly places: readonly Place[];
  readonly at: Place;
  /** By eye the spots hold words, which are wider than figures. */
  readonly how: Way;
  /** What stands in a spot; null where nothing was read yet. */
  said(place: Place): string | null;
  isOff(place: Place): boolean;
  onChoose(place: Place): void;
}

/** The ball with its holes and its track, and a spot for each place to be read; the one that is next is ringed. The back is a second ball. */
export function BallSpots({ ball, bowler, finish, places, how, ...spots }: SpotsProps) {
  const { front, back, at, isKnown } = useMemo(() => {
    const track = trackOn(ball, bowler);
    const isNamed = !places.includes(TRACK);
    return {
      front: measureFront({ finish, track: track.front, isNamed }),
      back: measureBack({ finish, track: track.back, isNamed }),
      at: spotsOf(track),
      isKnown: track.isKnown,
    };
  }, [ball, bowler, finish, places]);
  const isBehind = (place: Place) => at[place].half === "back";
  return (
    <div className={how === "tester" ? "measure-balls" : "measure-balls with-words"}>
      <div className="measure-ball">
        <Picture svg={front} className="measure-picture" />
        {places
          .filter((place) => !isBehind(place))
          .map((place) => (
            <Spot key={place} place={place} where={at[place].at} {...spots} />
          ))}
      </div>
      <div className="measure-ball measure-back">
        <Picture svg={back} className="measure-picture" />
        {places.filter(isBehind).map((place) => (
          <Spot key={place} place={place} where={at[place].at} {...spots} />
        ))}
      </div>
      {!isKnown && (places.includes(TRACK) || places.includes(OFF_TRACK)) && <p className="note">{MEASURE.trackUsual}</p>}
    </div>
  );
}

interface SpotProps extends Pick<SpotsProps, "at" | "said" | "isOff" | "onChoose"> {
  readonly place: Place;
  readonly where: Point;
}

function Spot({ place, where: [right, up], at, said, isOff, onChoose }: SpotProps) {
  const reading = said(place);
  const name = PLACE_LABELS[place];
  const style = { left: `${50 + 100 * BALL_RADIUS * right}%`, top: `${50 - 100 * BALL_RADIUS * up}%` };
  const classes = ["measure-spot", `spot-${place.replace(" ", "-")}`, place === at ? "at" : "", isOff(place) ? "off" : ""];
  return (
    <button
      type="button"
      className={classes.filter((one) => one !== "").join(" ")}
      style={style}
      aria-label={MEASURE.spot(name, reading ?? MEASURE.notRead)}
      aria-pressed={place === at}
      onClick={() => onChoose(place)}
    >
      <span className="spot-ring">{reading}</span>
      <span className="spot-name">{name}</span>
    </button>
  );
}
