import type { ReactNode } from "react";

/** What may be longer than its place on the sheet, and is then moved by hand or by keys. */
export function Scrolls({
  className,
  label,
  children,
}: {
  className: string;
  label: string;
  children: ReactNode;
}) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it is moved by the arrow keys once it has the focus
    <section className={className} aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
