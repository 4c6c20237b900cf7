import { countedSinceWork, gamesWord } from "#contract/records/benchBall";
import type { Bowler } from "#contract/records/bowler";
import { hookWordOf, speedWordOf } from "#engine/delivery/words";
import { INTAKE } from "#words/en/rooms/intake";
import { Pill, PillRow, Pills } from "../../pieces/Pills.tsx";
import { WordsField } from "../../pieces/PlainFields.tsx";
import { answered, shop } from "../../shop/shopClient.ts";
import { useRead } from "../../shop/useShop.ts";
import { type BallDraft, NOWHERE, type PlayedOn, type SaidOfDelivery } from "./visitDraft.ts";
import { WantedFor } from "./WantedFor.tsx";

interface HelpsProps {
  readonly ball: BallDraft;
  /** Null for somebody whom the shop has not seen before. */
  readonly bowlerId: string | null;
  readonly told: SaidOfDelivery;
  readonly playedOn: PlayedOn | undefined;
  onBall(change: Partial<BallDraft>): void;
  onTold(told: SaidOfDelivery): void;
  onPlayedOn(playedOn: PlayedOn): void;
}

/** What the plan is better for, in one tap each: nothing is on unless it was tapped, or is known of the bowler. */
export function HelpsThePlan({ ball, bowlerId, told, playedOn, onBall, onTold, onPlayedOn }: HelpsProps) {
  const bowler = useRead(["bowlers", bowlerId ?? ""], () => answered(shop.bowlers[":id"].$get({ param: { id: bowlerId ?? "" } })), {
    enabled: bowlerId !== null,
  }).data;
  const known = knownOf(bowler);
  return (
    <section className="counter-part helps">
      <h2>
        {INTAKE.helps} <small>{INTAKE.skip}</small>
      </h2>
      <Games ball={ball} onChange={(games) => onBall({ games })} />
      <Pills
        label={INTAKE.speed}
        words={INTAKE.speeds}
        value={told.speed ?? known.speed}
        onChange={(speed) => onTold({ ...told, speed })}
      />
      <Pills label={INTAKE.hook} words={INTAKE.hooks} value={told.hook ?? known.hook} onChange={(hook) => onTold({ ...told, hook })} />
      <Pills
        label={INTAKE.plays}
        words={INTAKE.arrows}
        value={told.plays ?? known.plays}
        onChange={(plays) => onTold({ ...told, plays })}
      />
      <WantedFor playedOn={playedOn ?? NOWHERE} onChange={onPlayedOn} />
      <WordsField label={INTAKE.words} value={ball.words} onChange={(words) => onBall({ words })} />
    </section>
  );
}

/** What is known of a bowler already, each part from the newest that says it; measured figures as the words that they are nearest to. */
function knownOf(bowler: Bowler | undefined): { readonly [Part in keyof Required<SaidOfDelivery>]: NonNullable<SaidOfDelivery[Part]> } {
  const newest = bowler?.deliveries.toSorted((a, b) => b.at.localeCompare(a.at)) ?? [];
  const first = <Word,>(of: (one: Bowler["deliveries"][number]) => Word | null) =>
    newest.map(of).find((word): word is NonNullable<Word> & Word => word !== null) ?? "";
  return {
    speed: first(({ speed, speedMph }) => (speedMph === null ? speed : speedWordOf(speedMph))),
    hook: first(({ hook, revRateRpm }) => (revRateRpm === null ? hook : hookWordOf(revRateRpm))),
    plays: first(({ plays }) => plays),
  };
}

/** Nobody taps a season one by one. */
const GAMES_STEP = 5;

interface GamesProps {
  readonly ball: BallDraft;
  onChange(games: NonNullable<BallDraft["games"]> | null): void;
}

/** Games since the last work: counted by the stepper, in a word, or said to be not known. */
function Games({ ball, onChange }: GamesProps) {
  const id = ball.ballId ?? "";
  const kept = useRead(["balls", id], () => answered(shop.balls[":id"].$get({ param: { id } })), { enabled: id !== "" }).data;
  const counted = kept === undefined ? 0 : countedSinceWork(kept);
  const known = kept === undefined ? null : counted > 0 ? counted : gamesWord(kept);
  const games = ball.games ?? known;
  const count = typeof games === "number" ? games : null;
  const words = Object.entries(INTAKE.gamesWords) as [keyof typeof INTAKE.gamesWords, string][];
  return (
    <PillRow label={INTAKE.gamesSince}>
      <span className="stepper">
        <button
          type="button"
          aria-label={INTAKE.fewer}
          disabled={count === null || count <= counted}
          onClick={() => onChange(Math.max(counted, (count ?? 0) - GAMES_STEP))}
        >
          −
        </button>
        <output>{count ?? "–"}</output>
        <button type="button" aria-label={INTAKE.more} onClick={() => onChange((count ?? counted) + GAMES_STEP)}>
          +
        </button>
      </span>
      {words.map(([word, text]) => (
        <Pill key={word} isOn={games === word} onTap={() => onChange(ball.games === word ? null : word)}>
          {text}
        </Pill>
      ))}
    </PillRow>
  );
}
