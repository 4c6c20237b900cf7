import type { ComponentType, LazyExoticComponent } from "react";
import type { Role } from "#contract/records/roles";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { lazyRoom, openingRoom } from "../client/lazyRoom.ts";

export interface Room {
  /** Who it is for, at the least: what it asks of the shop is refused to others. */
  readonly least: Role;
  /** Pattern of its address; parameters reach the room as `params`. */
  readonly path: string;
  readonly Room: LazyExoticComponent<ComponentType<{ readonly params: Readonly<Record<string, string>> }>>;
}

/** Every room of the app that works with the shop's records: its folder and one line here. The finish plan stands beside them: it needs no records. */
export const ROOMS: readonly Room[] = [
  { path: "/", least: "reader", Room: openingRoom(() => import("../rooms/today/TodayRoom.tsx").then((m) => ({ default: m.TodayRoom }))) },
  {
    path: "/intake",
    least: "counter",
    Room: lazyRoom(() => import("../rooms/intake/IntakeRoom.tsx").then((m) => ({ default: m.IntakeRoom }))),
  },
  {
    path: "/tickets/:id",
    least: "reader",
    Room: lazyRoom(() => import("../rooms/ticket/TicketRoom.tsx").then((m) => ({ default: m.TicketRoom }))),
  },
  {
    path: "/print/:what/:id",
    least: "reader",
    Room: lazyRoom(() => import("../rooms/print/PrintRoom.tsx").then((m) => ({ default: m.PrintRoom }))),
  },
  {
    path: "/bench/:ids",
    least: "technician",
    Room: lazyRoom(() => import("../rooms/bench/BenchRoom.tsx").then((m) => ({ default: m.BenchRoom }))),
  },
  {
    path: "/lane-side",
    least: "technician",
    Room: lazyRoom(() => import("../rooms/laneSide/LaneSideRoom.tsx").then((m) => ({ default: m.LaneSideRoom }))),
  },
  {
    path: "/lanes",
    least: "reader",
    Room: lazyRoom(() => import("../rooms/lanes/LanesRoom.tsx").then((m) => ({ default: m.LanesRoom }))),
  },
  {
    path: "/lanes/:id",
    least: "reader",
    Room: lazyRoom(() => import("../rooms/lanes/LaneRoom.tsx").then((m) => ({ default: m.LaneRoom }))),
  },
  {
    path: "/patterns/:id",
    least: "reader",
    Room: lazyRoom(() => import("../rooms/lanes/PatternRoom.tsx").then((m) => ({ default: m.PatternRoom }))),
  },
  {
    path: "/measure",
    least: "technician",
    Room: lazyRoom(() => import("../rooms/measure/MeasureRoom.tsx").then((m) => ({ default: m.MeasureRoom }))),
  },
  {
    path: "/balls/:id",
    least: "reader",
    Room: lazyRoom(() => import("../rooms/ball/BallRoom.tsx").then((m) => ({ default: m.BallRoom }))),
  },
  {
    path: "/bowlers/:id",
    least: "reader",
    Room: lazyRoom(() => import("../rooms/bowler/BowlerRoom.tsx").then((m) => ({ default: m.BowlerRoom }))),
  },
  {
    path: "/held",
    least: "reader",
    Room: lazyRoom(() => import("../rooms/outcomes/OutcomesRoom.tsx").then((m) => ({ default: m.OutcomesRoom }))),
  },
  { path: "/wrong", least: "reader", Room: lazyRoom(() => import("../rooms/wrong/WrongRoom.tsx").then((m) => ({ default: m.WrongRoom }))) },
  { path: "/bags/:id", least: "reader", Room: lazyRoom(() => import("../rooms/bag/BagRoom.tsx").then((m) => ({ default: m.BagRoom }))) },
  {
    path: "/stock",
    least: "reader",
    Room: lazyRoom(() => import("../rooms/stock/StockRoom.tsx").then((m) => ({ default: m.StockRoom }))),
  },
  {
    path: "/money",
    least: "counter",
    Room: lazyRoom(() => import("../rooms/money/MoneyRoom.tsx").then((m) => ({ default: m.MoneyRoom }))),
  },
  { path: "/shop", least: "reader", Room: lazyRoom(() => import("../rooms/shop/ShopRoom.tsx").then((m) => ({ default: m.ShopRoom }))) },
];

/** The rooms that the bar leads to, in the order of a day; the others are reached from these. */
export const BAR: readonly { readonly path: string; readonly least: Role; readonly name: string }[] = [
  { path: "/", least: "reader", name: SHOP_FRAME.today },
  { path: "/intake", least: "counter", name: SHOP_FRAME.intake },
  { path: "/lane-side", least: "technician", name: SHOP_FRAME.laneSide },
  { path: "/measure", least: "technician", name: SHOP_FRAME.measure },
  { path: "/plan", least: "reader", name: SHOP_FRAME.plan },
  { path: "/lanes", least: "reader", name: SHOP_FRAME.lanes },
  { path: "/stock", least: "reader", name: SHOP_FRAME.stock },
  { path: "/money", least: "counter", name: SHOP_FRAME.money },
  { path: "/shop", least: "reader", name: SHOP_FRAME.shop },
];
