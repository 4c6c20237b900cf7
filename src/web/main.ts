import "./style/colours.css";
import "./style/page.css";
import "./style/pieces.css";
import "./style/plan.css";
import "./style/trial.css";
import "./style/counter.css";
import "./style/intake.css";
import "./style/intakePanel.css";
import "./style/pills.css";
import "./style/shop.css";
import "./style/bench.css";
import "./style/guide.css";
import "./style/sheets.css";
import "./style/smallPaper.css";
import "./style/measureBall.css";
import "./style/measureRooms.css";
import "./style/ticket.css";
import "./style/bag.css";
import "./style/lanes.css";
import "./style/learning.css";
import "./style/customers.css";
import "./style/shopRooms.css";
import "./style/access.css";
import "./style/paper.css";
import { takeLanguage } from "virtual:catalogue";
import { pageFile } from "./client/pageFile.ts";
import { keepPage } from "./offline/install.ts";

const place = document.getElementById("page");
if (place === null) throw new Error("The page has no place to be drawn in.");

// As the server named the page; before anything that reads a word is there.
await pageFile(() => takeLanguage(document.documentElement.lang));
// Loaded one after the other, so that no single piece holds the thread for long.
const { REACT } = await pageFile(() => import("./client/react.ts"));
const { App } = await pageFile(() => import("./App.tsx"));
const { workerPool } = await pageFile(() => import("./client/workerPool.ts"));
const pool = workerPool();
const root = REACT.createRoot(place);
// In a transition React gives the thread back every few milliseconds, from the first rendering on.
REACT.startTransition(() => root.render(REACT.createElement(App, { pool })));
addEventListener("load", keepPage);
if (document.readyState === "complete") keepPage();
