import { Component, type ReactNode } from "react";

interface Guarded {
  /** What is shown; another one is tried anew. */
  readonly of: string;
  /** Leaves what failed. */
  readonly leave: () => void;
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

  override componentDidUpdate({ of }: Guarded): void {
    if (of !== this.props.of && this.state.failed !== null) this.setState({ failed: null });
  }

  override render(): ReactNode {
    const { failed } = this.state;
    if (failed === null) return this.props.children;
    return (
      <main className="failure">
        <h1>Wirefathom met a fault of its own</h1>
        <p>
          Everything you changed is in the library. Load it again, or go back to the library and open it from there.
        </p>
        <p className="small">What it said: {failed}</p>
        <p className="failure-acts">
          <button type="button" className="button is-main" onClick={() => location.reload()}>
            Load it again
          </button>
          <button
            type="button"
            className="button"
            onClick={() => {
              this.props.leave();
              this.setState({ failed: null });
            }}
          >
            Back to the library
          </button>
        </p>
      </main>
    );
  }
}
