import { useState } from "react";
import type { Photo } from "#contract/records/attachment";
import { PHOTOS } from "#words/en/rooms/photos";
import { WordField } from "../pieces/PlainFields.tsx";
import { Reading } from "./Reading.tsx";
import { answered, madeOn, newKey, shop } from "./shopClient.ts";
import { keepPhoto, type PhotosOf, type PhotoToKeep, usePhotos } from "./usePhotos.ts";
import { For } from "./useSession.tsx";
import { useWrite } from "./useShop.ts";
import { WriteFault } from "./WriteFault.tsx";
import { useShopTimes } from "./zone.ts";

interface PhotosProps {
  /** Which photos are shown. */
  readonly of: PhotosOf;
  /** What a new one belongs to. */
  readonly belongs: PhotoToKeep["belongs"];
}

/** Photos, and the way to take one: the telephone's camera or a file. */
export function Photos({ of, belongs }: PhotosProps) {
  const photos = usePhotos(of);
  const [shows, setShows] = useState<Photo["of"]>("condition");
  const keep = useWrite(keepPhoto, ["photos"]);
  const send = (file: File | undefined) => file !== undefined && keep.mutate({ file, of: shows, belongs, key: newKey() });
  return (
    <section className="plate">
      <h2>{PHOTOS.title}</h2>
      <Reading of={photos} isEmpty={(all) => all.length === 0} empty={PHOTOS.none}>
        {(all) => (
          <ul className="photos">
            {all.map((photo) => (
              <li key={photo.id}>
                <OnePhoto photo={photo} />
              </li>
            ))}
          </ul>
        )}
      </Reading>
      <For least="counter">
        <div className="field-row no-print">
          <WordField label={PHOTOS.of} value={shows} words={PHOTOS.ofs} onChange={(word) => setShows(word as Photo["of"])} />
          <label className="field plain-field">
            {keep.isPending ? PHOTOS.sending : PHOTOS.add}
            <input
              type="file"
              accept="image/jpeg,image/png,image/webp"
              disabled={keep.isPending}
              onChange={({ target }) => {
                send(target.files?.[0]);
                // The same file may be chosen again after a fault.
                target.value = "";
              }}
            />
          </label>
        </div>
      </For>
      <p className="note no-print">{PHOTOS.why}</p>
      <WriteFault error={keep.error} />
    </section>
  );
}

function OnePhoto({ photo }: { readonly photo: Photo }) {
  const times = useShopTimes();
  const remove = useWrite((one: Photo) => answered(shop.photos[":id"].$delete({ param: { id: one.id }, header: madeOn(one) })), ["photos"]);
  const [what, day] = [PHOTOS.ofs[photo.of], times.day(photo.takenAt ?? photo.createdAt)];
  const address = `/api/photos/${photo.id}/bytes`;
  return (
    <figure>
      <a href={address} target="_blank" rel="noreferrer">
        <img src={address} alt={PHOTOS.shows(what, day)} loading="lazy" />
      </a>
      <figcaption>
        {what}, {day}{" "}
        <For least="counter">
          <button
            type="button"
            className="button"
            aria-label={PHOTOS.takeOutOf(what, day)}
            disabled={remove.isPending}
            onClick={() => remove.mutate(photo)}
          >
            {PHOTOS.takeOut}
          </button>
        </For>
        <WriteFault error={remove.error} />
      </figcaption>
    </figure>
  );
}
