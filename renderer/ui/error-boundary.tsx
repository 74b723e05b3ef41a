import { Component, type ReactNode } from "react";
import { wording } from "./words.ts";

interface Props {
  /** Name of the region, as a sentence begins: "The sheet". */
  readonly what: string;
  readonly children: ReactNode;
}

/** Keeps a bug in one region from taking the window down: the others go on, and the document can be saved. */
export class ErrorBoundary extends Component<Props, { readonly broken: boolean }> {
  override state = { broken: false };

  static getDerivedStateFromError() {
    return { broken: true };
  }

  override render() {
    if (!this.state.broken) return this.props.children;
    return (
      <div className="broken" role="alert">
        <p>
          <strong>{wording.hasMetAFaultOfThe(this.props.what)}</strong>
          {wording.theDrawingIsNotHarmedIt}
        </p>
        <button type="button" className="button" onClick={() => this.setState({ broken: false })}>
          {wording.showItAgain}
        </button>
      </div>
    );
  }
}
