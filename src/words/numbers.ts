/** How a language writes a number: fixed decimals so that columns line up, its own decimal mark, a true minus; never "−0.0". */
export type Fixed = (value: number, decimals: number) => string;

/** @param locale a language with its country, as the browser knows it: en-GB */
export function fixedIn(locale: string): Fixed {
  const formats = new Map<number, Intl.NumberFormat>();
  const formatOf = (decimals: number): Intl.NumberFormat => {
    const format = formats.get(decimals) ?? new Intl.NumberFormat(locale, { ...digits(decimals), useGrouping: false });
    formats.set(decimals, format);
    return format;
  };
  return (value, decimals) => {
    // Rounded as files are: the same figure in every language.
    const rounded = Number(value.toFixed(decimals));
    return formatOf(decimals)
      .format(rounded === 0 ? 0 : rounded)
      .replace("-", "−");
  };
}

function digits(decimals: number): Intl.NumberFormatOptions {
  return { minimumFractionDigits: decimals, maximumFractionDigits: decimals };
}
