import { useMemo } from "react";
import type { Ball } from "#contract/records/ball";
import { benchBallOf } from "#contract/records/benchBall";
import { SIDE_IDS, type SideId } from "#engine/surface/padWork/sides";
import { BALL_IN_SPACE } from "#words/en/rooms/ballInSpace";
import { placeText } from "#words/en/rooms/measure";
import { useComputed } from "../../../client/poolHere.ts";
import { placesOnBall } from "../../../measured/placesOnBall.ts";
import { Chart } from "../../../pieces/Chart.tsx";
import { type Column, PlainTable } from "../../../pieces/PlainTable.tsx";
import { useReadingText } from "../../../shop/readingText.ts";
import { answered, shop } from "../../../shop/shopClient.ts";
import { figureText } from "../../../shop/typedValues.ts";
import { useRead } from "../../../shop/useShop.ts";
import { useShopTimes } from "../../../shop/zone.ts";
import type { BallRecords } from "../useBallRecords.ts";
import { BallInSpace } from "./BallInSpace.tsx";
import { newestWork, signedPadWork } from "./signedWork.ts";

interface TurnedProps {
  readonly ball: Ball;
  readonly records: BallRecords;
}

/** The ball with what is known of its surface by place: to be turned, flat where that is not wanted; and the same as a table. */
export function TurnedBall({ ball, records }: TurnedProps) {
  const times = useShopTimes();
  const { bowlerId } = ball;
  const bowler = useRead(["bowlers", bowlerId ?? ""], () => answered(shop.bowlers[":id"].$get({ param: { id: bowlerId ?? "" } })), {
    enabled: bowlerId !== null,
  }).data;
  const ticket = newestWork(records.tickets);
  const stages =
    ticket === null
      ? []
      : signedPadWork(
          ticket,
          records.stages.filter(({ ticketId }) => ticketId === ticket.id),
        );
  const { diameterIn } = benchBallOf(ball);
  const work = useComputed(stages.length === 0 ? null : { kind: "padWork", wanted: { name: ball.name, diameterIn, stages } }).data;
  const places = useMemo(() => placesOnBall(ball, bowler ?? null), [ball, bowler]);
  const onBall = useMemo(
    () => ({ places, work: work === undefined ? null : { cells: work.cells, overMean: work.overMean } }),
    [places, work],
  );
  const readings = usePlaceReadings(records);
  const isInSpace = useCanTurn();
  const flat = work !== undefined && <Chart svg={work.flat} className="globe" file="ball" />;
  return (
    <section className="plate">
      <h2>{BALL_IN_SPACE.title}</h2>
      {isInSpace ? <BallInSpace onBall={onBall} readings={readings} /> : flat}
      <ul className="note">
        <li>{ticket === null || work === undefined ? BALL_IN_SPACE.noWork : BALL_IN_SPACE.work(times.day(ticket.receivedAt))}</li>
        {work !== undefined && <li>{work.evenness}</li>}
        {isInSpace && <li>{places.pap === null ? BALL_IN_SPACE.noPap : BALL_IN_SPACE.trackIs}</li>}
        {isInSpace && places.pap !== null && places.pin === null && <li>{BALL_IN_SPACE.noPin}</li>}
        {isInSpace && places.pin !== null && (
          <li>{places.massBias === null ? BALL_IN_SPACE.noDrillingAngle : BALL_IN_SPACE.massBiasIs(ball.layout?.drillingAngleDeg ?? 0)}</li>
        )}
      </ul>
      <PlaceTable seconds={work?.seconds ?? []} readings={readings} />
    </section>
  );
}

/** A ball that turns is motion: where less of it is asked for the flat picture stands. */
function useCanTurn(): boolean {
  return useMemo(() => !matchMedia("(prefers-reduced-motion: reduce)").matches, []);
}

type PlaceReadings = Readonly<Partial<Record<string, string>>>;

/** The newest reading of each side, of the track and beside it: roughness, or how it looked beside the reference. */
function usePlaceReadings({ readings }: BallRecords): PlaceReadings {
  const readingText = useReadingText();
  const oldestFirst = readings.toSorted((a, b) => a.at.localeCompare(b.at));
  return Object.fromEntries(
    oldestFirst.flatMap((reading) => {
      const text = readingText(reading);
      return text === "" ? [] : [[reading.place, text]];
    }),
  );
}

interface PlaceTableProps {
  readonly seconds: readonly { readonly side: SideId; readonly seconds: number }[];
  readonly readings: PlaceReadings;
}

const SIDES: readonly string[] = SIDE_IDS;

/** The same in figures: the sides in their order, then the track and what lies beside it. */
function PlaceTable({ seconds, readings }: PlaceTableProps) {
  const { columns } = BALL_IN_SPACE;
  const worked = (place: string) => seconds.find(({ side }) => side === place);
  const others = Object.keys(readings).filter((place) => !SIDES.includes(place));
  const rows = [...SIDES.filter((side) => readings[side] !== undefined || worked(side) !== undefined), ...others.toSorted().toReversed()];
  const secondsOn = (place: string): string => {
    const work = worked(place);
    return work === undefined ? "" : figureText(Math.round(work.seconds));
  };
  const shown: readonly Column<string>[] = [
    { name: columns.side, cell: placeText },
    { name: columns.seconds, kind: "figure", cell: secondsOn },
    { name: columns.reading, kind: "figure", cell: (place) => readings[place] ?? "" },
  ];
  return rows.length === 0 ? null : <PlainTable name={BALL_IN_SPACE.title} columns={shown} rows={rows} keyOf={(place) => place} />;
}
