import { CAUTIONS, type CautionId } from "#engine/rules/cautions";
import { SHOP } from "#words/en/rooms/shop";
import { messageText } from "#words/messageText";

/** Every caution that the shop will be shown somewhere, with where it comes from. */
export function CautionList() {
  return (
    <>
      <p className="note">{SHOP.cautionsWhy}</p>
      <ul className="caution-list">
        {(Object.keys(CAUTIONS) as CautionId[]).map((id) => (
          <li key={id}>
            {messageText({ id: `caution.${id}`, params: {} })}{" "}
            <span className="note">
              {SHOP.marks[CAUTIONS[id].mark]}: {CAUTIONS[id].source}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
