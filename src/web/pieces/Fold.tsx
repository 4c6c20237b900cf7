import { type ReactNode, startTransition, useEffect, useState } from "react";
import { Button, Disclosure, DisclosurePanel, Heading } from "react-aria-components";

interface FoldProps {
  readonly title: string;
  /** What is inside, in a line; shown while folded. */
  readonly summary: string;
  /** `wide`: open where the page has room for it. */
  readonly startsOpen: "wide" | "always" | "never";
  /** Frames to wait before what is inside is built; several folds built at once would hold the page. */
  readonly turn?: number;
  /** Rank of the title among the page's headings. */
  readonly level?: 2 | 3;
  readonly children: ReactNode;
}

/** False until that many frames have been drawn. */
function useTurn(frames: number): boolean {
  const [left, setLeft] = useState(frames);
  useEffect(() => {
    if (left === 0) return;
    const frame = requestAnimationFrame(() => startTransition(() => setLeft(left - 1)));
    return () => cancelAnimationFrame(frame);
  }, [left]);
  return left === 0;
}

const WIDE = "(min-width: 1080px)";

/** A part of the page that can be folded away. */
export function Fold({ title, summary, startsOpen, turn = 0, level = 2, children }: FoldProps) {
  const [open, setOpen] = useState(() => startsOpen === "always" || (startsOpen === "wide" && matchMedia(WIDE).matches));
  const hasTurn = useTurn(turn);
  return (
    <Disclosure className="fold" isExpanded={open} onExpandedChange={setOpen}>
      <Heading className="fold-title" level={level}>
        <Button slot="trigger" className="fold-trigger">
          <span className="fold-mark" aria-hidden="true" />
          <span>{title}</span>
          {!open && summary !== "" && <span className="fold-summary">{summary}</span>}
        </Button>
      </Heading>
      <DisclosurePanel className="fold-panel">{open && hasTurn ? children : null}</DisclosurePanel>
    </Disclosure>
  );
}
