import type { FinishPlan } from "#engine/planning/plan";
import { PLAN_ANSWER } from "#words/en/screens";
import { messageText } from "#words/messageText";
import { Picture } from "../../pieces/Picture.tsx";

/** The pick in a sentence, what is as good, where the cliff is, how sure; or why there is none. */
export function Verdict({
  plan,
  isFinal,
  swatch,
}: {
  readonly plan: FinishPlan;
  readonly isFinal: boolean;
  readonly swatch: string | null;
}) {
  const { pick } = plan;
  return (
    <section className="verdict" aria-live="polite">
      {swatch !== null && <Picture svg={swatch} className="swatch verdict-swatch" />}
      <div>
        <h2 className="pick-sentence">{pick === null ? PLAN_ANSWER.noPick : PLAN_ANSWER.takeThis(pick.finish)}</h2>
        {pick !== null && (
          <p>
            {plateauSentence(plan, pick.plateau)} {pick.cliff !== null && PLAN_ANSWER.cliff[pick.cliff]}{" "}
            {isFinal
              ? `${PLAN_ANSWER.sureSentence[pick.sure]} ${PLAN_ANSWER.sureShare(Math.round(pick.sureShare * 100), plan.worlds)}`
              : `(${PLAN_ANSWER.notYetSure})`}
          </p>
        )}
        {plan.messages.map((m) => (
          <p key={m.id} className="verdict-message">
            {messageText(m)}
          </p>
        ))}
      </div>
    </section>
  );
}

/** Which finishes are much the same. A ball that is not asked to strike is judged by its hook, so shots are not spoken of. */
function plateauSentence(plan: FinishPlan, plateau: readonly string[]): string {
  const isJudgedByShots = plan.candidates.some((c) => c.chance !== null);
  return plateau.length > 1 || isJudgedByShots ? PLAN_ANSWER.plateau(plateau) : "";
}
