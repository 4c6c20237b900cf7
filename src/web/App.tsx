import { QueryClientProvider } from "@tanstack/react-query";
import { lazy, Suspense, useState } from "react";
import { Link, Route, Switch, useRoute } from "wouter";
import { FRAME } from "#words/en/screens";
import { PoolHere } from "./client/poolHere.ts";
import type { WorkerPool } from "./client/workerPool.ts";
import { Guard } from "./pieces/Guard.tsx";
import { PlanRoom } from "./rooms/plan/PlanRoom.tsx";
import { Away, PlainAddress } from "./shell/Away.tsx";
import { Invented } from "./shell/Invented.tsx";
import { PaperSize } from "./shell/PaperSize.tsx";
import { ROOMS } from "./shell/rooms.ts";
import { StillToSend } from "./shell/StillToSend.tsx";
import { TopBar } from "./shell/TopBar.tsx";
import { useVariant } from "./shell/useVariant.ts";
import { shopMemory } from "./shop/readingAgain.ts";
import { OutboxHere } from "./shop/useOutbox.tsx";

const DesignRoom = lazy(() => import("./rooms/design/DesignRoom.tsx").then((m) => ({ default: m.DesignRoom })));

/** The frame around every room. */
export function App({ pool }: { readonly pool: WorkerPool }) {
  const [memory] = useState(shopMemory);
  const [variant, setVariant] = useVariant();
  // At the bench the step fills the screen.
  const [isAtBench] = useRoute("/bench/:ids");
  return (
    <QueryClientProvider client={memory}>
      <PoolHere value={pool}>
        <OutboxHere>
          <a className="skip" href="#answer">
            {FRAME.skip}
          </a>
          {!isAtBench && <TopBar variant={variant} onVariant={setVariant} />}
          <PaperSize />
          <Invented />
          <Away />
          <PlainAddress />
          <StillToSend />
          <Guard>
            <Suspense fallback={null}>
              <Switch>
                {ROOMS.map(({ path, Room }) => (
                  <Route key={path} path={path}>
                    {(params) => <Room params={params as Readonly<Record<string, string>>} />}
                  </Route>
                ))}
                <Route path="/plan">
                  <PlanRoom pool={pool} />
                </Route>
                <Route path="/design">
                  <DesignRoom />
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
            </Suspense>
          </Guard>
        </OutboxHere>
      </PoolHere>
    </QueryClientProvider>
  );
}
