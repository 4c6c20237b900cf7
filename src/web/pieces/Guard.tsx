import { Component, type ReactNode } from "react";
import { FRAME } from "#words/en/screens";

/** Keeps a fault of ours in one room from emptying the page, and says what broke. Tries again when what is watched changes. */
export class Guard extends Component<{ readonly children: ReactNode; readonly watch?: unknown }, { readonly failure: string | null }> {
  override state = { failure: null };

  static getDerivedStateFromError(error: unknown): { failure: string } {
    return { failure: error instanceof Error ? error.message : String(error) };
  }

  override componentDidUpdate(before: { readonly watch?: unknown }): void {
    if (before.watch !== this.props.watch && this.state.failure !== null) this.setState({ failure: null });
  }

  override render(): ReactNode {
    if (this.state.failure === null) return this.props.children;
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
