import { QueryClientProvider } from "@tanstack/react-query";
import { lazy, Suspense, useState } from "react";
import { Link, Route, Switch } from "wouter";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { FRAME } from "#words/en/screens";
import type { WorkerPool } from "./client/workerPool.ts";
import { Guard } from "./pieces/Guard.tsx";
import { OneOf } from "./pieces/OneOf.tsx";
import { PlanRoom } from "./rooms/plan/PlanRoom.tsx";
import { Invented } from "./shell/Invented.tsx";
import { ROOMS } from "./shell/rooms.ts";
import { WhoActs } from "./shell/WhoActs.tsx";
import { shopMemory } from "./shop/readingAgain.ts";
import { useVariant, VARIANTS } from "./useVariant.ts";

const DesignRoom = lazy(() => import("./rooms/design/DesignRoom.tsx").then((m) => ({ default: m.DesignRoom })));

/** The frame around every room. */
export function App({ pool }: { readonly pool: WorkerPool }) {
  const [variant, setVariant] = useVariant();
  const [memory] = useState(shopMemory);
  return (
    <QueryClientProvider client={memory}>
      <a className="skip" href="#answer">
        {FRAME.skip}
      </a>
      <header className="top no-print">
        <Link href="/" className="product">
          <img src="/mark.svg" alt="" width="30" height="30" />
          <span>
            <strong>{FRAME.product}</strong> <span className="motto">{FRAME.motto}</span>
          </span>
        </Link>
        <nav aria-label={SHOP_FRAME.rooms}>
          {ROOMS.flatMap(({ path, name }) =>
            name === null
              ? []
              : [
                  <Link key={path} href={path}>
                    {name}
                  </Link>,
                ],
          )}
          <Link href="/plan">{SHOP_FRAME.plan}</Link>
          <Link href="/design">{SHOP_FRAME.design}</Link>
        </nav>
        <WhoActs />
        <OneOf label={FRAME.variant} value={variant} words={VARIANTS} onChange={setVariant} />
      </header>
      <Invented />
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
    </QueryClientProvider>
  );
}
