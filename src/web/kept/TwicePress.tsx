import { useState } from "react";

export interface PressSays {
  readonly text: string;
  /** The same with what it is about, for those who hear one press of many. */
  readonly label: string;
}

/** What is done at the second press alone: it cannot be taken back. */
export function TwicePress({
  first,
  sure,
  onSure,
}: {
  first: PressSays;
  sure: PressSays;
  onSure: () => void;
}) {
  const [isAsked, setAsked] = useState(false);
  const { text, label } = isAsked ? sure : first;
  return (
    <button
      type="button"
      className="kept-act"
      aria-label={label}
      onClick={() => (isAsked ? onSure() : setAsked(true))}
    >
      {text}
    </button>
  );
}
