import { fixed, LANGUAGE } from "#words/figures";
import { answered, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

/** What the shop has settled on; the usual until it has been read. */
export function useSettings() {
  return useRead(["settings"], () => answered(shop.settings.$get()));
}

export interface ShopTimes {
  /** A day and the time of day: Thu 26 Nov, 17:30. */
  at(instant: string): string;
  /** A day: 26 Nov 2026. */
  day(instant: string): string;
  /** The same with its year, for paper: Thu 26 Nov 2026, 17:30. */
  onPaper(instant: string): string;
  /** A day in whole words, for paper: November 26, 2026. */
  longDay(instant: string): string;
  /** A day of the calendar: 26 Nov 2026. */
  date(day: string): string;
  /** A day of the calendar, with its weekday: Thu 26 Nov 2026. */
  weekday(day: string): string;
  /** Money of the shop: $12.00. */
  money(cents: number): string;
}

/** Days, times and money in the shop's zone and currency. */
export function useShopTimes(): ShopTimes {
  const settings = useSettings().data;
  const zone = settings?.zone ?? "UTC";
  const parts = { timeZone: zone, weekday: "short", day: "numeric", month: "short", hour: "2-digit", minute: "2-digit" } as const;
  const short = new Intl.DateTimeFormat(LANGUAGE, parts);
  const onPaper = new Intl.DateTimeFormat(LANGUAGE, { ...parts, year: "numeric" });
  const day = new Intl.DateTimeFormat(LANGUAGE, { timeZone: zone, day: "numeric", month: "short", year: "numeric" });
  const longDay = new Intl.DateTimeFormat(LANGUAGE, { timeZone: zone, day: "numeric", month: "long", year: "numeric" });
  const date = new Intl.DateTimeFormat(LANGUAGE, { timeZone: "UTC", day: "numeric", month: "short", year: "numeric" });
  const weekday = new Intl.DateTimeFormat(LANGUAGE, { timeZone: "UTC", weekday: "short", day: "numeric", month: "short", year: "numeric" });
  const money = new Intl.NumberFormat(LANGUAGE, { style: "currency", currency: settings?.currency ?? "USD" });
  return {
    at: (instant) => short.format(new Date(instant)),
    day: (instant) => day.format(new Date(instant)),
    onPaper: (instant) => onPaper.format(new Date(instant)),
    longDay: (instant) => longDay.format(new Date(instant)),
    date: (written) => date.format(new Date(written)),
    weekday: (written) => weekday.format(new Date(written)),
    money: (cents) => money.format(cents / 100),
  };
}

const MICROINCH_PER_UM = 1 / 0.0254;

export interface RoughnessShown {
  readonly unit: "µin" | "µm";
  /** A roughness as a bare figure, for a column whose heading has the unit. */
  figure(um: number): string;
}

/** Roughness in the unit that the shop has chosen. */
export function useRoughnessUnit(): RoughnessShown {
  const unit = useSettings().data?.roughnessUnit ?? "µin";
  return { unit, figure: (um) => (unit === "µm" ? fixed(um, 3) : fixed(um * MICROINCH_PER_UM, 1)) };
}

/** Roughness with its unit, as the shop has chosen it. */
export function useRoughness(): (um: number) => string {
  const { unit, figure } = useRoughnessUnit();
  return (um) => `${figure(um)} ${unit}`;
}

const KMH_PER_MPH = 1.609344;

export interface SpeedUnit {
  readonly unit: string;
  /** A speed with its unit. */
  text(mph: number): string;
  /** A speed as it stands in a field. */
  typed(mph: number | null): string;
  /** A figure typed in that unit, mph. */
  mph(figure: number): number;
}

/** Speed in the unit that the shop has chosen. */
export function useSpeed(): SpeedUnit {
  const unit = useSettings().data?.speedUnit ?? "mph";
  const factor = unit === "mph" ? 1 : KMH_PER_MPH;
  return {
    unit,
    text: (mph) => `${fixed(mph * factor, 1)} ${unit}`,
    typed: (mph) => (mph === null ? "" : String(Number((mph * factor).toFixed(2)))),
    mph: (figure) => (factor === 1 ? figure : Math.round((1000 * figure) / factor) / 1000),
  };
}
