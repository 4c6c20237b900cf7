import type { Ball } from "#contract/records/ball";
import { countedSinceWork, gamesWord } from "#contract/records/benchBall";
import type { Ticket } from "#contract/records/ticket";
import { INTAKE } from "#words/en/rooms/intake";
import { answered, shop } from "./shopClient.ts";
import { useHouse } from "./usePlaces.ts";
import { useRead } from "./useShop.ts";

/** What was said at the counter beside the complaint, each with its name: how many games, how deep the scratches, where the ball is bowled. */
export function useSaidAtCounter(ticket: Ticket, ball: Ball): readonly (readonly [string, string])[] {
  const { playedOn, scratches } = ticket;
  const house = useHouse(playedOn?.houseId ?? undefined).data?.name ?? null;
  const patternId = playedOn?.patternId ?? null;
  const named = useRead(["patterns", patternId ?? ""], () => answered(shop.patterns[":id"].$get({ param: { id: patternId ?? "" } })), {
    enabled: patternId !== null,
  }).data;
  const night = playedOn === null || playedOn.night === null ? null : INTAKE.nights[playedOn.night];
  const pattern = playedOn?.pattern === "the usual" ? INTAKE.usualPattern : (named?.name ?? null);
  const wantedFor = INTAKE.playedOn(house, night, pattern);
  const counted = countedSinceWork(ball);
  const word = gamesWord(ball);
  return [
    ...(counted > 0
      ? [[INTAKE.gamesSince, `${counted}`] as const]
      : word === null
        ? []
        : [[INTAKE.gamesSince, INTAKE.gamesWords[word]] as const]),
    ...(scratches === null ? [] : [[INTAKE.catches, INTAKE.catchWords[scratches]] as const]),
    ...(wantedFor === "" ? [] : [[INTAKE.house, wantedFor] as const]),
  ];
}
