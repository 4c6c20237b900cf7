import type { Bowler } from "#contract/records/bowler";
import { BOWLER } from "#words/en/rooms/bowler";
import { HOOK_WORD_TEXT, SPEED_WORD_TEXT } from "#words/en/screens";
import { Facts } from "../../pieces/Facts.tsx";
import { For } from "../../shop/useSession.tsx";
import { type ShopTimes, type SpeedUnit, useShopTimes, useSpeed } from "../../shop/zone.ts";
import { AddDelivery } from "./AddDelivery.tsx";
import { type Delivery, newestFirst } from "./deliveryDraft.ts";
import { Measuring } from "./Measuring.tsx";

/** What the bowler gives the ball: the newest first and whole, how it is known beside it, the earlier ones below. */
export function Deliveries({ bowler }: { readonly bowler: Bowler }) {
  const [speed, times] = [useSpeed(), useShopTimes()];
  const [newest, ...earlier] = newestFirst(bowler.deliveries);
  return (
    <section className="plate">
      <h2>{BOWLER.delivery}</h2>
      {newest === undefined ? (
        <p className="nothing">{BOWLER.noDelivery}</p>
      ) : (
        <Facts
          rows={[
            ...figures(newest, speed),
            [BOWLER.how, BOWLER.hows[newest.how]],
            [BOWLER.on, times.day(newest.at)],
            ...(newest.note === "" ? [] : [[BOWLER.note, newest.note] as const]),
          ]}
        />
      )}
      <For least="counter">
        <AddDelivery bowler={bowler} />
      </For>
      <Measuring bowler={bowler} />
      {earlier.length > 0 && <Earlier deliveries={earlier} speed={speed} times={times} />}
    </section>
  );
}

function figures(one: Delivery, speed: SpeedUnit): readonly (readonly [string, string])[] {
  const told: readonly (readonly [string, string | null])[] = [
    [BOWLER.speed, one.speedMph === null ? null : speed.text(one.speedMph)],
    [BOWLER.speedWord, one.speed === null ? null : SPEED_WORD_TEXT[one.speed]],
    [BOWLER.revs, one.revRateRpm === null ? null : BOWLER.rpm(one.revRateRpm)],
    [BOWLER.rotation, one.axisRotationDeg === null ? null : BOWLER.degrees(one.axisRotationDeg)],
    [BOWLER.tilt, one.axisTiltDeg === null ? null : BOWLER.degrees(one.axisTiltDeg)],
    [BOWLER.hookWord, one.hook === null ? null : HOOK_WORD_TEXT[one.hook]],
  ];
  return told.flatMap(([name, value]) => (value === null ? [] : [[name, value] as const]));
}

interface EarlierProps {
  readonly deliveries: readonly Delivery[];
  readonly speed: SpeedUnit;
  readonly times: ShopTimes;
}

function Earlier({ deliveries, speed, times }: EarlierProps) {
  return (
    <details className="add-stop">
      <summary>
        {BOWLER.earlier} ({deliveries.length})
      </summary>
      <ol className="ball-log">
        {deliveries.map((one, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two may have been written at one moment
          <li key={`${one.at} ${i}`}>
            <time dateTime={one.at}>{times.day(one.at)}</time>
            <span>
              {figures(one, speed)
                .map(([name, value]) => `${name.toLowerCase()} ${value}`)
                .join(", ")}{" "}
              ({BOWLER.hows[one.how]}){one.note === "" ? "" : `: ${one.note}`}
            </span>
          </li>
        ))}
      </ol>
    </details>
  );
}
