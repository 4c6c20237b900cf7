import { type ReactNode, useState } from "react";
import { Button, Disclosure, DisclosurePanel, Heading } from "react-aria-components";

interface FoldProps {
  readonly title: string;
  /** What is inside, in a line; shown while folded. */
  readonly summary: string;
  /** `wide`: open where the page has room for it. */
  readonly startsOpen: "wide" | "always" | "never";
  readonly children: ReactNode;
}

const WIDE = "(min-width: 1080px)";

/** A part of the page that can be folded away. */
export function Fold({ title, summary, startsOpen, children }: FoldProps) {
  const [open, setOpen] = useState(() => startsOpen === "always" || (startsOpen === "wide" && matchMedia(WIDE).matches));
  return (
    <Disclosure className="fold" isExpanded={open} onExpandedChange={setOpen}>
      <Heading className="fold-title" level={3}>
        <Button slot="trigger" className="fold-trigger">
          <span className="fold-mark" aria-hidden="true" />
          <span>{title}</span>
          {!open && summary !== "" && <span className="fold-summary">{summary}</span>}
        </Button>
      </Heading>
      <DisclosurePanel className="fold-panel">{open ? children : null}</DisclosurePanel>
    </Disclosure>
  );
}
