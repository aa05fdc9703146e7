import { Component, type ReactNode } from "react";
import { REPORT_WORDS as WORDS } from "../../core/base/words/report.ts";

interface Guarded {
  /** What is shown; another one is tried anew. */
  readonly of: string;
  /** Leaves what failed. */
  readonly leave: () => void;
  /** Shows the report of what failed; null while there is none. */
  readonly showReport: (() => void) | null;
  readonly children: ReactNode;
}

/**
 * Stands in for what failed by a fault of the program's own, so that the window is never blank: says that nothing is lost and
 * offers the way out.
 */
export class FailureGuard extends Component<Guarded, { readonly failed: string | null }> {
  override state = { failed: null };

  static getDerivedStateFromError(error: unknown): { readonly failed: string } {
    return { failed: error instanceof Error ? error.message : String(error) };
  }

  override componentDidCatch(error: unknown): void {
    // As if nothing had caught it: whoever takes faults down hears of it.
    reportError(error);
  }

  override componentDidUpdate({ of }: Guarded): void {
    if (of !== this.props.of && this.state.failed !== null) this.setState({ failed: null });
  }

  override render(): ReactNode {
    const { failed } = this.state;
    const { children, showReport } = this.props;
    if (failed === null) return children;
    return (
      <main className="failure">
        <h1>{WORDS.failed}</h1>
        <p>{WORDS.failedAbout}</p>
        <p className="small">What it said: {failed}</p>
        <p className="failure-acts">
          <button type="button" className="button is-main" onClick={() => location.reload()}>
            {WORDS.again}
          </button>
          <button
            type="button"
            className="button"
            onClick={() => {
              this.props.leave();
              this.setState({ failed: null });
            }}
          >
            {WORDS.library}
          </button>
          {showReport && (
            <button type="button" className="button" onClick={showReport}>
              {WORDS.show}
            </button>
          )}
        </p>
      </main>
    );
  }
}
