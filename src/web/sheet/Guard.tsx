import { Component, type ReactNode } from "react";

interface GuardProps {
  /** What stands in the place of a part that could not be drawn. */
  readonly says: string;
  /** Another value tries the part again. */
  readonly trial: unknown;
  readonly children: ReactNode;
}

/** Keeps a fault in one part of the sheet from taking the rest with it. */
export class Guard extends Component<GuardProps, { readonly failed: boolean }> {
  override state = { failed: false };

  static getDerivedStateFromError(): { failed: boolean } {
    return { failed: true };
  }

  override componentDidUpdate({ trial }: GuardProps): void {
    if (this.state.failed && trial !== this.props.trial) this.setState({ failed: false });
  }

  override render(): ReactNode {
    return this.state.failed ? <p className="guarded">{this.props.says}</p> : this.props.children;
  }
}
