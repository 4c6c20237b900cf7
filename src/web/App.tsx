import { QueryClientProvider } from "@tanstack/react-query";
import { Suspense, useState } from "react";
import { Link, Route, Switch, useLocation, useRoute } from "wouter";
import type { Role } from "#contract/records/roles";
import { ACCESS } from "#words/en/rooms/access";
import { FRAME } from "#words/en/screens";
import { lazyRoom } from "./client/lazyRoom.ts";
import { PoolHere } from "./client/poolHere.ts";
import type { WorkerPool } from "./client/workerPool.ts";
import { Guard } from "./pieces/Guard.tsx";
import { ConnectionNotice, PlainAddress } from "./shell/ConnectionNotice.tsx";
import { ROOMS } from "./shell/rooms.ts";
import { Invented, OnlyReading } from "./shell/ShopNotices.tsx";
import { SignInRoom } from "./shell/SignInRoom.tsx";
import { StillToSend } from "./shell/StillToSend.tsx";
import { TopBar } from "./shell/TopBar.tsx";
import { useVariant } from "./shell/useVariant.ts";
import { shopMemory } from "./shop/readingAgain.ts";
import { OutboxHere } from "./shop/useOutbox.tsx";
import { SessionProvider, useMay, useSession } from "./shop/useSession.tsx";
import { useSettings } from "./shop/zone.ts";

const PlanRoom = lazyRoom(() => import("./rooms/plan/PlanRoom.tsx").then((m) => ({ default: m.PlanRoom })));

/** What every room stands on: what was read, the threads, who is signed in, what waits to be sent. */
export function App({ pool }: { readonly pool: WorkerPool }) {
  const [memory] = useState(shopMemory);
  return (
    <QueryClientProvider client={memory}>
      <PoolHere value={pool}>
        <SessionProvider>
          <OutboxHere>
            <Frame pool={pool} />
          </OutboxHere>
        </SessionProvider>
      </PoolHere>
    </QueryClientProvider>
  );
}

/** The bar, what has to be said in every room, and the room; or the way in, and the room behind it as it stood: what was being typed is still there. */
function Frame({ pool }: { readonly pool: WorkerPool }) {
  const [variant, setVariant] = useVariant();
  // At the bench the step fills the screen.
  const [isAtBench] = useRoute("/bench/:ids");
  const [address] = useLocation();
  const door = useSession();
  const may = useMay();
  const isIn = door.state !== "signed out";
  return (
    <>
      <a className="skip" href={isIn ? "#answer" : "#sign-in"}>
        {FRAME.skip}
      </a>
      {!isAtBench && isIn && <TopBar variant={variant} onVariant={setVariant} />}
      {isIn && <PaperSize />}
      {isIn && <Invented />}
      {isIn && <ConnectionNotice />}
      {isIn && <OnlyReading />}
      <PlainAddress />
      {isIn && <StillToSend />}
      <Guard watch={address}>
        <Suspense fallback={null}>
          {!isIn && <SignInRoom />}
          {(isIn || door.personId !== null) && (
            <div key={door.personId} hidden={!isIn}>
              <Switch>
                {ROOMS.map(({ path, least, Room }) => (
                  <Route key={path} path={path}>
                    {(params) => (may(least) ? <Room params={params as Readonly<Record<string, string>>} /> : <NotForYou least={least} />)}
                  </Route>
                ))}
                <Route path="/plan">
                  <PlanRoom pool={pool} />
                </Route>
                <Route>
                  {({ "*": path }: Record<string, string | undefined>) => (
                    <main id="answer" className="lost">
                      <p>{FRAME.notFound(`/${path ?? ""}`)}</p>
                      <Link href="/">{FRAME.toToday}</Link>
                    </main>
                  )}
                </Route>
              </Switch>
            </div>
          )}
        </Suspense>
      </Guard>
    </>
  );
}

function NotForYou({ least }: { readonly least: Role }) {
  return (
    <main id="answer" className="lost">
      <p>{ACCESS.notForRoom(ACCESS.roles[least])}</p>
      <Link href="/">{FRAME.toToday}</Link>
    </main>
  );
}

/** Letter is 17.6 mm lower than A4: what fills a page of the one has to be drawn a little smaller on the other. */
const LETTER = "@page { size: Letter portrait } @media print { .plan-room { zoom: 0.88 } }";

/** Pages that are printed from any room lie on the paper that is in the shop's printer; the style sheet's own size is A4. */
export function PaperSize() {
  return useSettings().data?.paperSize === "Letter" ? <style>{LETTER}</style> : null;
}
