import { OpeningFields } from "./OpeningFields.tsx";
import { PenetrationFields } from "./PenetrationFields.tsx";
import type { FieldsProps } from "./props.ts";

/** What of the picked thing can be typed and pressed. */
export function PickFields({ pick, ...rest }: FieldsProps) {
  switch (pick.kind) {
    case "opening":
      return <OpeningFields {...rest} pick={pick} />;
    case "penetration":
      return <PenetrationFields {...rest} pick={pick} />;
    default:
      return null;
  }
}
