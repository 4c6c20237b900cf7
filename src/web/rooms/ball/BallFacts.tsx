import type { ReactNode } from "react";
import type { Ball } from "#contract/records/ball";
import { gamesSinceWork, knownFinish } from "#contract/records/benchBall";
import { BALL_LOG } from "#words/en/rooms/ball";
import { INTAKE } from "#words/en/rooms/intake";
import { BALL_JOB_WORDS, COVER_WORDS } from "#words/en/screens";
import type { EditField } from "../../pieces/EditForm.tsx";
import { EditPlate } from "../../pieces/EditPlate.tsx";
import { ownerLink } from "../../pieces/ownerLink.tsx";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { useEditing } from "../../shop/useEditing.ts";
import { useRead } from "../../shop/useShop.ts";
import { figureText, useShopTimes } from "../../shop/zone.ts";
import { ballChange, ballTyped } from "./ballForm.ts";

const WORDS = BALL_LOG.fields;
const FIELDS: readonly EditField[] = [
  { path: "name", label: WORDS.name },
  { path: "serial", label: INTAKE.serialShort },
  { path: "cover", label: INTAKE.cover, words: { "": BALL_LOG.unknown, ...COVER_WORDS } },
  { path: "job", label: BALL_LOG.job, words: { "": BALL_LOG.unknown, ...BALL_JOB_WORDS } },
  { path: "state", label: WORDS.state, words: BALL_LOG.states },
  { path: "boxFinish", label: WORDS.boxFinish, help: WORDS.finishHelp },
  { path: "core.massLb", label: WORDS.massLb, as: "number" },
  { path: "core.diameterIn", label: WORDS.diameterIn, as: "number" },
  { path: "core.rgIn", label: WORDS.rgIn, as: "number" },
  { path: "core.differentialIn", label: WORDS.differentialIn, as: "number" },
  { path: "core.intermediateDifferentialIn", label: WORDS.intermediateIn, as: "number" },
  { path: "layout.pinToPapIn", label: WORDS.pinToPapIn, as: "number" },
  { path: "layout.drillingAngleDeg", label: WORDS.drillingAngleDeg, as: "number" },
  { path: "layout.valAngleDeg", label: WORDS.valAngleDeg, as: "number" },
  { path: "heatLimitF", label: WORDS.heatLimitF, as: "number", help: WORDS.heatLimitHelp },
  { path: "purchasedOn", label: WORDS.purchasedOn, as: "date" },
  { path: "drilledOn", label: WORDS.drilledOn, as: "date" },
  { path: "warranty.until", label: WORDS.warrantyUntil, as: "date" },
  { path: "warranty.note", label: WORDS.warrantyNote },
  { path: "notes", label: WORDS.notes, as: "lines" },
];

/** What the ball is: owner, cover, core, layout, warranty; changed in place. */
export function BallFacts({ ball }: { readonly ball: Ball }) {
  const { bowlerId } = ball;
  const owner = useRead(["bowlers", bowlerId ?? ""], () => answered(shop.bowlers[":id"].$get({ param: { id: bowlerId ?? "" } })), {
    enabled: bowlerId !== null,
  });
  const editing = useEditing({
    memory: `gritwright.ball.${ball.id}`,
    thing: ball,
    typedOf: ballTyped,
    send: (typed, made, changed) =>
      answered(shop.balls[":id"].$patch({ param: { id: ball.id }, json: ballChange(typed, changed), header: madeOn(made) })),
    read: async (current) => (await import("#contract/records/ball")).ballKept.safeParse(current).data ?? null,
    touches: ["balls", "search", "queue"],
  });
  const typed = ballTyped(ball);
  const times = useShopTimes();
  const shown = ({ path, label, words, as }: EditField): readonly (readonly [string, ReactNode])[] => {
    const value = typed[path];
    if (value === "" || path === "name") return [];
    if (as === "number") return [[label, figureText(Number(value))]];
    return [[label, as === "date" ? times.date(value) : (words?.[value] ?? value)]];
  };
  return (
    <EditPlate
      least="counter"
      title={BALL_LOG.about}
      rows={[
        [BALL_LOG.owner, ownerLink(bowlerId === null ? null : (owner.data ?? null), BALL_LOG.nobody)],
        [BALL_LOG.finish, knownFinish(ball) ?? BALL_LOG.unknown],
        [BALL_LOG.sinceWork, String(gamesSinceWork(ball))],
        ...FIELDS.flatMap(shown),
      ]}
      fields={FIELDS}
      editing={editing}
    />
  );
}
