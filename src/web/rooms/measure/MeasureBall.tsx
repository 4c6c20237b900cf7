import { useEffect, useRef, useState } from "react";
import { Link } from "wouter";
import { finishOrUsual } from "#contract/records/benchBall";
import { type ReadingLineInput, readingLine } from "#drawing/readingLine";
import { OFF_TRACK, type Place, TRACK } from "#engine/surface/readings/places";
import { MEASURE } from "#words/en/rooms/measure";
import { abrasiveName } from "../../benchWork/plannedStages.ts";
import type { RoughnessUnit } from "../../measured/entries.ts";
import { meanOf, type Read } from "../../measured/readings.ts";
import { lineOf } from "../../measured/sidesLine.ts";
import { OneOf } from "../../pieces/OneOf.tsx";
import { Picture } from "../../pieces/Picture.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { useRoughness, useRoughnessUnit } from "../../shop/zone.ts";
import { BallSpots } from "./BallSpots.tsx";
import { BeforeAfter } from "./BeforeAfter.tsx";
import { EarlierReadings } from "./EarlierReadings.tsx";
import { ProfileFiles } from "./ProfileFiles.tsx";
import { ReadHere } from "./ReadHere.tsx";
import { type Measuring, type MeasuringOf, useMeasuring } from "./useMeasuring.ts";
import { VerdictBar } from "./VerdictBar.tsx";

interface MeasureProps extends MeasuringOf {
  readonly unit: RoughnessUnit;
}

/** A ball with its spots, what is being read on the right, what it says below, docked. */
export function MeasureBall({ unit, ...of }: MeasureProps) {
  const { ball, ticket, work } = of;
  const measuring = useMeasuring(of);
  const [isFileOpen, setFileOpen] = useState(false);
  const bowler = useBowlerOf(ball.bowlerId);
  const { figure } = useRoughnessUnit();
  const said = (read: Read | null): string | null => {
    const mean = meanOf(read?.um ?? []);
    if (mean !== null) return figure(mean);
    return read?.comparison == null ? null : MEASURE.sheenKeys[read.comparison];
  };
  const off = new Set(measuring.judged.off.map(({ side }): Place => side));
  const finish = work?.finish ?? finishOrUsual(ball);
  useEffect(() => {
    document.title = MEASURE.titleOf(ball.name);
  }, [ball.name]);
  return (
    <>
      <Head of={of} measuring={measuring} />
      <div className="measure-columns">
        <div>
          <BallSpots
            ball={ball}
            bowler={bowler}
            finish={finish}
            places={measuring.places}
            at={measuring.at}
            how={measuring.how}
            said={(place) => said(measuring.readAt(place))}
            isOff={(place) => off.has(place)}
            onChoose={(place) => measuring.set({ place, typed: "" })}
          />
          {measuring.how === "tester" && <ReadingLine {...lineOf(measuring.readAt, measuring.judged, unit)} />}
        </div>
        <div>
          <ReadHere of={of} measuring={measuring} unit={unit} said={said} onFile={() => setFileOpen(true)} />
          {ticket !== null && (
            <BeforeAfter
              places={[...measuring.places, ...[TRACK, OFF_TRACK].filter((one): one is Place => !measuring.places.includes(one as Place))]}
              before={(place) => said(measuring.readBefore(place))}
              after={(place) => (measuring.when === "after" ? said(measuring.readAt(place)) : null)}
            />
          )}
        </div>
      </div>
      {isFileOpen && <ProfileFiles ball={ball} ticket={ticket} />}
      <EarlierReadings readings={measuring.all} />
      <VerdictBar ball={ball} ticket={ticket} work={work} measuring={measuring} />
    </>
  );
}

function useBowlerOf(bowlerId: string | null) {
  const read = useRead(["bowlers", bowlerId ?? ""], () => answered(shop.bowlers[":id"].$get({ param: { id: bowlerId ?? "" } })), {
    enabled: bowlerId !== null,
  });
  return read.data ?? null;
}

function Head({ of: { ball, ticket, work }, measuring }: { readonly of: MeasuringOf; readonly measuring: Measuring }) {
  const roughness = useRoughness();
  const last = abrasiveName(work?.surface.at(-1)?.abrasive ?? null);
  const before = (place: Place) => {
    const mean = meanOf(measuring.readBefore(place)?.um ?? []);
    return mean === null ? null : roughness(mean);
  };
  const [track, offTrack] = [before(TRACK), before(OFF_TRACK)];
  const facts = [
    last === null ? null : MEASURE.afterWork(last),
    ticket === null || (track === null && offTrack === null) ? null : MEASURE.beforeWork(track, offTrack),
  ];
  return (
    <div className="measure-head">
      <div>
        <h1>{MEASURE.titleOf(ball.name)}</h1>
        <p className="measure-facts">
          {facts.filter((fact) => fact !== null).join(" · ")}{" "}
          <Link href={ticket === null ? `/balls/${ball.id}` : `/tickets/${ticket.id}`}>
            {ticket === null ? ball.name : MEASURE.toTicket}
          </Link>{" "}
          <Link href="/measure">{MEASURE.otherBall}</Link>
        </p>
      </div>
      <div className="measure-ways">
        {ticket !== null && (
          <OneOf
            label={MEASURE.whenLabel}
            value={measuring.when === "after" ? "after" : "before"}
            words={MEASURE.whens}
            onChange={(when) => measuring.set({ when, place: null, typed: "" })}
          />
        )}
        <OneOf label={MEASURE.howLabel} value={measuring.how} words={MEASURE.ways} onChange={measuring.setHow} />
      </div>
    </div>
  );
}

/** Beyond this it would only be empty. */
const WIDEST = 700;

/** Every side's mean on one line, drawn as wide as its place so that its words stay as large as the others. */
export function ReadingLine(input: ReadingLineInput) {
  const place = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = place.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => setWidth(Math.min(WIDEST, element.clientWidth)));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return (
    <div ref={place} className="reading-line">
      {width > 0 && input.points.length > 0 && <Picture svg={readingLine(input, width)} className="reading-line-picture" />}
    </div>
  );
}
