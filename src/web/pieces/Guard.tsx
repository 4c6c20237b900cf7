import { Component, type ReactNode } from "react";
import { FRAME } from "#words/en/screens";

interface GuardProps {
  readonly children: ReactNode;
  /** What is shown in its place, where something can be; without it what broke is said. */
  readonly instead?: ReactNode;
  /** A change of it tries again. */
  readonly watch?: unknown;
}

/** Keeps a fault of ours in one place from emptying the page. */
export class Guard extends Component<GuardProps, { readonly failure: string | null }> {
  override state = { failure: null };

  static getDerivedStateFromError(error: unknown): { failure: string } {
    return { failure: error instanceof Error ? error.message : String(error) };
  }

  override componentDidUpdate(before: GuardProps): void {
    if (before.watch !== this.props.watch && this.state.failure !== null) this.setState({ failure: null });
  }

  override render(): ReactNode {
    if (this.state.failure === null) return this.props.children;
    if (this.props.instead !== undefined) return this.props.instead;
    return (
      <div className="broken" role="alert">
        <p>
          {FRAME.failed} <code>{this.state.failure}</code>
        </p>
        {/* An installed page has no bar with such a button of its own. */}
        <button type="button" className="button" onClick={() => location.reload()}>
          {FRAME.loadAgain}
        </button>
      </div>
    );
  }
}
