import type { Ball } from "#contract/records/ball";
import { BALL_FIELDS, BALL_ROLES } from "#contract/records/ballFields";
import { gamesSinceWork, knownFinish } from "#contract/records/benchBall";
import { BALL_LOG } from "#words/en/rooms/ball";
import { BALL_JOB_WORDS, COVER_WORDS } from "#words/en/screens";
import { describedForm, type FieldWords } from "../../pieces/describedForm.ts";
import { EditPlate } from "../../pieces/EditPlate.tsx";
import { ownerLink } from "../../pieces/ownerLink.tsx";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { useEditing } from "../../shop/useEditing.ts";
import { useRead } from "../../shop/useShop.ts";
import { useShopTimes, useSpeed } from "../../shop/zone.ts";
import type { BallChange } from "./useBallRecords.ts";

/** What is asked at the counter has its words there, what a plan asks has its own. */
const WORDS: FieldWords<typeof BALL_FIELDS> = {
  ...BALL_LOG,
  choices: { cover: COVER_WORDS, job: BALL_JOB_WORDS, state: BALL_LOG.states },
};

/** What the ball is: owner, cover, core, layout, warranty; changed in place. */
export function BallFacts({ ball }: { readonly ball: Ball }) {
  const { bowlerId } = ball;
  const owner = useRead(["bowlers", bowlerId ?? ""], () => answered(shop.bowlers[":id"].$get({ param: { id: bowlerId ?? "" } })), {
    enabled: bowlerId !== null,
  });
  const { fields, typedOf, changeOf, factsOf } = describedForm(BALL_FIELDS, WORDS, useSpeed());
  const editing = useEditing({
    memory: `gritwright.ball.${ball.id}`,
    thing: ball,
    typedOf,
    send: (typed, made, changed) =>
      answered(
        shop.balls[":id"].$patch({
          param: { id: ball.id },
          json: changeOf(ball, typed, changed) as BallChange,
          header: madeOn(made),
        }),
      ),
    read: async (current) => (await import("#contract/records/ball")).ballKept.safeParse(current).data ?? null,
    touches: ["balls", "search", "queue"],
  });
  const facts = factsOf(ball, useShopTimes()).filter(({ path }) => path !== "name");
  return (
    <EditPlate
      least={BALL_ROLES.change}
      title={BALL_LOG.about}
      rows={[
        [BALL_LOG.owner, ownerLink(bowlerId === null ? null : (owner.data ?? null), BALL_LOG.nobody)],
        [BALL_LOG.finish, knownFinish(ball) ?? BALL_LOG.unknown],
        [BALL_LOG.sinceWork, String(gamesSinceWork(ball))],
        ...facts.map(({ label, text }) => [label, text] as const),
      ]}
      fields={fields}
      editing={editing}
    />
  );
}
