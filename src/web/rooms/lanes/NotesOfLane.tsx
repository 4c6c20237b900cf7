import { useState } from "react";
import type { Lane } from "#contract/records/place";
import type { ShotNote } from "#contract/records/shotNote";
import { SHOT_NOTES } from "#words/en/rooms/lanes";
import { PlainTable } from "../../pieces/PlainTable.tsx";
import { answered, madeOn, shop } from "../../shop/shopClient.ts";
import { useOutbox } from "../../shop/useOutbox.tsx";
import { For } from "../../shop/useSession.tsx";
import { useRead, useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { type SpeedUnit, useShopTimes, useSpeed } from "../../shop/zone.ts";

/** The shots that were noted on a lane, newest first, and those that still wait to be sent. */
export function NotesOfLane({ lane, notes }: { readonly lane: Lane; readonly notes: readonly ShotNote[] }) {
  const { waiting } = useOutbox();
  const times = useShopTimes();
  const speed = useSpeed();
  const remove = useWrite(
    (note: ShotNote) => answered(shop["shot-notes"][":id"].$delete({ param: { id: note.id }, header: madeOn(note) })),
    ["shot-notes"],
  );
  const [failedId, setFailedId] = useState<string | null>(null);
  const mine = waiting.filter(({ path, body }) => path === "/api/shot-notes" && isOnLane(body, lane.id));
  return (
    <section className="plate">
      <h2>{SHOT_NOTES.list}</h2>
      {mine.map(({ key, what }) => (
        <p key={key} className="note">
          {what}. {SHOT_NOTES.waits}
        </p>
      ))}
      {notes.length === 0 ? (
        <p className="nothing">{SHOT_NOTES.none}</p>
      ) : (
        <PlainTable
          name={SHOT_NOTES.list}
          rows={notes}
          keyOf={({ id }) => id}
          columns={[
            { name: SHOT_NOTES.when, cell: ({ at }) => times.at(at) },
            { name: SHOT_NOTES.bowler, cell: ({ bowlerId }) => (bowlerId === null ? SHOT_NOTES.unknown : <NameOfBowler id={bowlerId} />) },
            { name: SHOT_NOTES.ballColumn, cell: (note) => <BallAndFinish note={note} /> },
            { name: SHOT_NOTES.seen, cell: seenWords },
            { name: SHOT_NOTES.leave, cell: ({ leave }) => leaveText(leave) },
            { name: SHOT_NOTES.places, cell: (note) => placesText(note, speed) },
            {
              name: SHOT_NOTES.takeOut,
              kind: "press",
              cell: (note) => (
                <>
                  <For least="technician">
                    <button
                      type="button"
                      className="button"
                      aria-label={SHOT_NOTES.takeOutOf(times.at(note.at))}
                      disabled={remove.isPending}
                      onClick={() => remove.mutate(note, { onError: () => setFailedId(note.id) })}
                    >
                      {SHOT_NOTES.takeOut}
                    </button>
                  </For>
                  {failedId === note.id && <WriteFault error={remove.error} />}
                </>
              ),
            },
          ]}
        />
      )}
    </section>
  );
}

function isOnLane(body: unknown, laneId: string): boolean {
  return typeof body === "object" && body !== null && "laneId" in body && body.laneId === laneId;
}

function BallAndFinish({ note: { ballId, finish } }: { readonly note: ShotNote }) {
  return (
    <>
      {ballId === null ? SHOT_NOTES.unknown : <NameOfBall id={ballId} />}
      {finish !== null && `, ${finish}`}
    </>
  );
}

function seenWords({ turned, arrived }: ShotNote): string {
  const words = [turned === null ? null : SHOT_NOTES.turnedWords[turned], arrived === null ? null : SHOT_NOTES.arrivedWords[arrived]];
  return words.filter((word) => word !== null).join(", ") || SHOT_NOTES.unknown;
}

function leaveText(leave: ShotNote["leave"]): string {
  if (leave === null) return SHOT_NOTES.notSeen;
  return leave.length === 0 ? SHOT_NOTES.strike : leave.join("-");
}

function placesText({ boards, breakpointBoard, breakpointFt, speedMph }: ShotNote, speed: SpeedUnit): string {
  return [
    ...boards.map(({ atFt, board }) => SHOT_NOTES.atFt(atFt, board)),
    ...(breakpointBoard === null ? [] : [SHOT_NOTES.breakpoint(breakpointBoard, breakpointFt)]),
    ...(speedMph === null ? [] : [speed.text(speedMph)]),
  ].join(", ");
}

const BEING_READ = "…";

/** A ball by its name, as soon as it has been read. */
export function NameOfBall({ id }: { readonly id: string }) {
  return useRead(["balls", id], () => answered(shop.balls[":id"].$get({ param: { id } }))).data?.name ?? BEING_READ;
}

/** A bowler by name, as soon as it has been read. */
export function NameOfBowler({ id }: { readonly id: string }) {
  return useRead(["bowlers", id], () => answered(shop.bowlers[":id"].$get({ param: { id } }))).data?.name ?? BEING_READ;
}
