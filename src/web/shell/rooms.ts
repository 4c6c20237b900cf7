import { type ComponentType, type LazyExoticComponent, lazy } from "react";
import { SHOP_FRAME } from "#words/en/rooms/frame";

export interface Room {
  /** Pattern of its address; parameters reach the room as `params`. */
  readonly path: string;
  /** Its name among the rooms; null for a room that is reached from another. */
  readonly name: string | null;
  readonly Room: LazyExoticComponent<ComponentType<{ readonly params: Readonly<Record<string, string>> }>>;
}

/** Every room of the app that works with the shop's records: its folder and one line here. The finish plan stands beside them: it needs no records. */
export const ROOMS: readonly Room[] = [
  { path: "/", name: SHOP_FRAME.today, Room: lazy(() => import("../rooms/today/TodayRoom.tsx").then((m) => ({ default: m.TodayRoom }))) },
  {
    path: "/intake",
    name: SHOP_FRAME.intake,
    Room: lazy(() => import("../rooms/intake/IntakeRoom.tsx").then((m) => ({ default: m.IntakeRoom }))),
  },
  { path: "/tickets/:id", name: null, Room: lazy(() => import("../rooms/ticket/TicketRoom.tsx").then((m) => ({ default: m.TicketRoom }))) },
  {
    path: "/print/:what/:id",
    name: null,
    Room: lazy(() => import("../rooms/print/PrintRoom.tsx").then((m) => ({ default: m.PrintRoom }))),
  },
  { path: "/bench/:ids", name: null, Room: lazy(() => import("../rooms/bench/BenchRoom.tsx").then((m) => ({ default: m.BenchRoom }))) },
  {
    path: "/lane-side",
    name: SHOP_FRAME.laneSide,
    Room: lazy(() => import("../rooms/laneSide/LaneSideRoom.tsx").then((m) => ({ default: m.LaneSideRoom }))),
  },
  {
    path: "/lanes",
    name: SHOP_FRAME.lanes,
    Room: lazy(() => import("../rooms/lanes/LanesRoom.tsx").then((m) => ({ default: m.LanesRoom }))),
  },
  { path: "/lanes/:id", name: null, Room: lazy(() => import("../rooms/lanes/LaneRoom.tsx").then((m) => ({ default: m.LaneRoom }))) },
  {
    path: "/patterns/:id",
    name: null,
    Room: lazy(() => import("../rooms/lanes/PatternRoom.tsx").then((m) => ({ default: m.PatternRoom }))),
  },
  {
    path: "/measure",
    name: SHOP_FRAME.measure,
    Room: lazy(() => import("../rooms/measure/MeasureRoom.tsx").then((m) => ({ default: m.MeasureRoom }))),
  },
  { path: "/balls/:id", name: null, Room: lazy(() => import("../rooms/ball/BallRoom.tsx").then((m) => ({ default: m.BallRoom }))) },
  {
    path: "/bowlers/:id",
    name: null,
    Room: lazy(() => import("../rooms/bowler/BowlerRoom.tsx").then((m) => ({ default: m.BowlerRoom }))),
  },
  {
    path: "/stock",
    name: SHOP_FRAME.stock,
    Room: lazy(() => import("../rooms/stock/StockRoom.tsx").then((m) => ({ default: m.StockRoom }))),
  },
  {
    path: "/money",
    name: SHOP_FRAME.money,
    Room: lazy(() => import("../rooms/money/MoneyRoom.tsx").then((m) => ({ default: m.MoneyRoom }))),
  },
];
