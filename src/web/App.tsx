import { lazy, Suspense } from "react";
import { Link, Redirect, Route, Switch } from "wouter";
import { FRAME } from "#words/en/screens";
import type { WorkerPool } from "./client/workerPool.ts";
import { Guard } from "./pieces/Guard.tsx";
import { OneOf } from "./pieces/OneOf.tsx";
import { PlanRoom } from "./rooms/plan/PlanRoom.tsx";
import { useVariant, VARIANTS } from "./useVariant.ts";

const DesignRoom = lazy(() => import("./rooms/design/DesignRoom.tsx").then((m) => ({ default: m.DesignRoom })));

/** The frame around every room. */
export function App({ pool }: { readonly pool: WorkerPool }) {
  const [variant, setVariant] = useVariant();
  return (
    <>
      <a className="skip" href="#answer">
        {FRAME.skip}
      </a>
      <header className="top no-print">
        <Link href="/plan" className="product">
          <img src="/mark.svg" alt="" width="30" height="30" />
          <span>
            <strong>{FRAME.product}</strong> <span className="motto">{FRAME.motto}</span>
          </span>
        </Link>
        <nav aria-label={FRAME.product}>
          <Link href="/plan">{FRAME.planRoom}</Link>
          <Link href="/design">{FRAME.designRoom}</Link>
        </nav>
        <OneOf label={FRAME.variant} value={variant} words={VARIANTS} onChange={setVariant} />
      </header>
      <Guard>
        <Suspense fallback={null}>
          <Switch>
            <Route path="/">
              <Redirect to="/plan" replace />
            </Route>
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
                  <Link href="/plan">{FRAME.toPlan}</Link>
                </main>
              )}
            </Route>
          </Switch>
        </Suspense>
      </Guard>
    </>
  );
}
