/** The colours of a picture. Meaning never hangs on them: every line also has its own stroke, every mark its own word. */
export interface Paint {
  readonly paper: string;
  /** The lane itself, a little lighter than the paper around it. */
  readonly lane: string;
  readonly ink: string;
  readonly faint: string;
  readonly hair: string;
  readonly oil: string;
  readonly accent: string;
  readonly shine: string;
}

/** For files: plain colours, because many programs that open SVG know no CSS variables. */
export const FILE_PAINT: Paint = {
  paper: "#f7f4ec",
  lane: "#fdfbf5",
  ink: "#1c2730",
  faint: "#55616a",
  hair: "#c9c2b1",
  oil: "#2b7286",
  accent: "#a11d5c",
  shine: "#ffffff",
};

const onPage = (name: keyof Paint): string => `var(--gw-${name}, ${FILE_PAINT[name]})`;

/** For pictures that stand in the page: they follow its variant, paper or bench-dark. */
export const PAGE_PAINT: Paint = {
  paper: onPage("paper"),
  lane: onPage("lane"),
  ink: onPage("ink"),
  faint: onPage("faint"),
  hair: onPage("hair"),
  oil: onPage("oil"),
  accent: onPage("accent"),
  shine: onPage("shine"),
};

export const SERIF = "Georgia, 'Times New Roman', 'DejaVu Serif', serif";
export const SANS = "system-ui, 'Segoe UI', Roboto, 'Liberation Sans', 'DejaVu Sans', sans-serif";

const PAGE_COLOUR = /var\(--gw-\w+, (#[0-9a-f]{6})\)/g;

/** A picture that was drawn for the page, as one that stands by itself: as it would have been drawn for a file. */
export function inFileColours(svg: string): string {
  return svg.replace(PAGE_COLOUR, "$1");
}
