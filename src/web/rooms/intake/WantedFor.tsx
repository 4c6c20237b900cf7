import { WEEKDAYS } from "#contract/records/dayIn";
import { INTAKE } from "#words/en/rooms/intake";
import { Pills } from "../../pieces/Pills.tsx";
import { useHouses, usePatterns } from "../../shop/usePlaces.ts";
import type { PlayedOn } from "./visitDraft.ts";

/** As many as find room to be tapped. */
const MOST = 6;
const USUAL = "the usual";
type Night = NonNullable<PlayedOn["night"]>;
/** A week of the counter begins on Monday. */
const NIGHTS = Object.fromEntries([...WEEKDAYS.slice(1), WEEKDAYS[0]].map((night) => [night, INTAKE.nights[night]])) as Record<
  Night,
  string
>;

interface WantedForProps {
  readonly playedOn: PlayedOn;
  onChange(playedOn: PlayedOn): void;
}

/** Where and when the balls are wanted for: house, league night, and the pattern or the usual one. */
export function WantedFor({ playedOn, onChange }: WantedForProps) {
  const houses = useHouses().data?.items ?? [];
  const houseId = playedOn.houseId ?? (houses.length === 1 ? houses[0].id : undefined);
  const patterns = usePatterns(houseId).data?.items ?? [];
  const pattern = playedOn.patternId ?? playedOn.pattern ?? "";
  const named = Object.fromEntries(patterns.slice(0, MOST).map(({ id, name }) => [id, name]));
  return (
    <>
      {houses.length > 0 && (
        <Pills
          label={INTAKE.house}
          words={Object.fromEntries(houses.slice(0, MOST).map(({ id, name }) => [id, name]))}
          value={playedOn.houseId ?? ""}
          onChange={(house) => onChange({ ...playedOn, houseId: house === "" ? null : house, patternId: null })}
        />
      )}
      <Pills
        label={INTAKE.night}
        words={NIGHTS}
        value={playedOn.night ?? ""}
        onChange={(night) => onChange({ ...playedOn, night: night === "" ? null : night })}
      />
      <Pills
        label={INTAKE.pattern}
        words={{ [USUAL]: INTAKE.usualPattern, ...named }}
        value={pattern}
        onChange={(chosen) =>
          onChange({
            ...playedOn,
            pattern: chosen === USUAL ? USUAL : null,
            patternId: chosen === USUAL || chosen === "" ? null : chosen,
          })
        }
      />
    </>
  );
}
