import "./style/colours.css";
import "./style/page.css";
import "./style/pieces.css";
import "./style/plan.css";
import "./style/paper.css";
import { StrictMode, startTransition } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./App.tsx";
import { workerPool } from "./client/workerPool.ts";

const place = document.getElementById("page");
if (place === null) throw new Error("The page has no place to be drawn in.");
const pool = workerPool();
const root = createRoot(place);
// In a transition React gives the thread back every few milliseconds, from the first rendering on.
startTransition(() =>
  root.render(
    <StrictMode>
      <App pool={pool} />
    </StrictMode>,
  ),
);
