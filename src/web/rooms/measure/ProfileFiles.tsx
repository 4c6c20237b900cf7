import { useState } from "react";
import type { Ball } from "#contract/records/ball";
import type { Ticket } from "#contract/records/ticket";
import { SIDE_IDS } from "#engine/surface/padWork/sides";
import { CUTOFFS_MM } from "#engine/surface/roughness/cutoff";
import { FORMS, type Form } from "#engine/surface/roughness/form";
import { SIDE_NAMES } from "#words/en/padWork";
import { PROFILE_FILES } from "#words/en/rooms/profile";
import { useComputed } from "../../client/poolHere.ts";
import type { ProfileSeen } from "../../client/protocol.ts";
import { Chart } from "../../pieces/Chart.tsx";
import { Facts } from "../../pieces/Facts.tsx";
import { WordField } from "../../pieces/PlainFields.tsx";
import { keepProfileFile, useProfileFiles } from "../../shop/profileFiles.ts";
import { Reading } from "../../shop/Reading.tsx";
import { answered, newKey, shop } from "../../shop/shopClient.ts";
import { saveFromShop } from "../../shop/shopFile.ts";
import { useWrite } from "../../shop/useShop.ts";
import { WriteFault } from "../../shop/WriteFault.tsx";
import { useShopTimes } from "../../shop/zone.ts";

interface ProfileFilesProps {
  readonly ball: Ball;
  readonly ticket: Ticket | null;
}

interface Opened {
  readonly key: string;
  readonly file: File;
  readonly bytes: Uint8Array;
}

/** Files that a tester wrote: opened, looked at, and kept with the ball. */
export function ProfileFiles({ ball, ticket }: ProfileFilesProps) {
  const [opened, setOpened] = useState<Opened | null>(null);
  return (
    <section className="plate">
      <h2>{PROFILE_FILES.title}</h2>
      <label className="button file-button">
        {PROFILE_FILES.choose}
        <input
          type="file"
          className="file-input"
          accept=".csv,.txt,.x3p,.smd"
          onChange={async ({ target }) => {
            const [file] = target.files ?? [];
            if (file !== undefined) setOpened({ key: newKey(), file, bytes: new Uint8Array(await file.arrayBuffer()) });
            // The same file can be opened again.
            target.value = "";
          }}
        />
      </label>
      <p className="note">{PROFILE_FILES.what}</p>
      {opened !== null && <OneProfile key={opened.key} opened={opened} ball={ball} ticket={ticket} />}
      <KnownFiles ballId={ball.id} />
    </section>
  );
}

const TABLE = "";

function OneProfile({ opened, ball, ticket }: ProfileFilesProps & { readonly opened: Opened }) {
  const [form, setForm] = useState<Form>("arc");
  const [cutoff, setCutoff] = useState(TABLE);
  const options = { cutoffMm: cutoff === TABLE ? null : Number(cutoff), shortCutoffMm: null, form };
  const { data: seen, error } = useComputed({ kind: "profile", name: opened.file.name, bytes: opened.bytes, options }, [
    "profile",
    opened.key,
    options,
  ]);
  return (
    <>
      <h3 translate="no">{opened.file.name}</h3>
      <div className="field-row">
        <WordField label={PROFILE_FILES.form} value={form} words={formWords()} onChange={(chosen) => setForm(chosen as Form)} />
        <WordField label={PROFILE_FILES.cutoff} value={cutoff} words={cutoffWords()} onChange={setCutoff} />
      </div>
      {seen === undefined ? (
        <p className="reading">{error === null ? PROFILE_FILES.working : PROFILE_FILES.broken(error.message)}</p>
      ) : seen.kind === "unreadable" ? (
        <ul role="alert" className="failed">
          {seen.sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      ) : (
        <Seen seen={seen} opened={opened} ball={ball} ticket={ticket} />
      )}
    </>
  );
}

function formWords(): Readonly<Record<string, string>> {
  return Object.fromEntries(FORMS.toReversed().map((form) => [form, PROFILE_FILES.forms[form]]));
}

function cutoffWords(): Readonly<Record<string, string>> {
  // In their order: names that look like whole numbers would come first in an object.
  return { [TABLE]: PROFILE_FILES.cutoffUsual, ...Object.fromEntries(CUTOFFS_MM.map((mm) => [mm.toFixed(2), PROFILE_FILES.mm(mm)])) };
}

interface SeenProps extends ProfileFilesProps {
  readonly seen: Extract<ProfileSeen, { kind: "seen" }>;
  readonly opened: Opened;
}

const NOT_SAID = "";
const TRACK = "track";

function Seen({ seen, opened, ball, ticket }: SeenProps) {
  const [place, setPlace] = useState(NOT_SAID);
  const keep = useWrite(() => keepBoth(opened, ball, ticket, seen, place), ["profile-files", "readings"]);
  const places = { [NOT_SAID]: "–", ...Object.fromEntries(SIDE_IDS.map((side) => [side, SIDE_NAMES[side]])), [TRACK]: PROFILE_FILES.track };
  return (
    <>
      {seen.picture !== null && <Chart svg={seen.picture} className="profile-chart" file="profile" />}
      <p>{seen.said}</p>
      <Facts rows={seen.rows} />
      {seen.raUm !== null && <WordField label={PROFILE_FILES.place} value={place} words={places} onChange={setPlace} />}
      <button type="button" className="button primary" disabled={keep.isPending || keep.isSuccess} onClick={() => keep.mutate(undefined)}>
        {keep.isPending ? PROFILE_FILES.keeping : seen.raUm === null || place === NOT_SAID ? PROFILE_FILES.keepFile : PROFILE_FILES.keep}
      </button>
      {keep.isSuccess && <p role="status">{PROFILE_FILES.kept(opened.file.name)}</p>}
      <WriteFault error={keep.error} />
    </>
  );
}

/** The file, and where it says where it was taken, its figures as a reading that leads back to it. Pressed again after a fault, neither is kept twice. */
async function keepBoth(opened: Opened, ball: Ball, ticket: Ticket | null, seen: SeenProps["seen"], place: string): Promise<void> {
  const belongs = { ballId: ball.id, ...(ticket === null ? {} : { ticketId: ticket.id }) };
  const file = await keepProfileFile({ file: opened.file, belongs, key: opened.key });
  if (seen.raUm === null || place === NOT_SAID) return;
  const { raUm, rzUm, rsmUm } = seen;
  const when =
    ticket === null
      ? ("between" as const)
      : ticket.state === "ready" || ticket.state === "drying"
        ? ("after" as const)
        : ("before" as const);
  const json = { ...belongs, at: file.createdAt, when, place, how: "tester" as const, raUm, rzUm, rsmUm, profileFileId: file.id };
  await answered(shop.readings.$post({ json }, { headers: { "Idempotency-Key": `${opened.key}-reading` } }));
}

function KnownFiles({ ballId }: { readonly ballId: string }) {
  const files = useProfileFiles(ballId);
  const times = useShopTimes();
  return (
    <>
      <h3>{PROFILE_FILES.known}</h3>
      <Reading of={files} isEmpty={({ items }) => items.length === 0} empty={PROFILE_FILES.none}>
        {({ items }) => (
          <ul className="found">
            {items.map(({ id, name, createdAt }) => (
              <li key={id}>
                <button type="button" onClick={() => void saveFromShop(`/api/profile-files/${id}/bytes`, "GET", name)}>
                  <strong>{PROFILE_FILES.save(name)}</strong> <span>{times.at(createdAt)}</span>
                </button>
              </li>
            ))}
          </ul>
        )}
      </Reading>
    </>
  );
}
