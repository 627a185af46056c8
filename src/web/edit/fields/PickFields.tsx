import { FaceFields } from "./FaceFields.tsx";
import { JointFields } from "./JointFields.tsx";
import { LineFields } from "./LineFields.tsx";
import { OpeningFields } from "./OpeningFields.tsx";
import { PenetrationFields } from "./PenetrationFields.tsx";
import type { FieldsProps } from "./props.ts";
import { ZoneFields } from "./ZoneFields.tsx";

/** What of the picked thing can be typed and pressed. */
export function PickFields({ pick, ...rest }: FieldsProps) {
  switch (pick.kind) {
    case "opening":
      return <OpeningFields {...rest} pick={pick} />;
    case "penetration":
      return <PenetrationFields {...rest} pick={pick} />;
    case "zone":
      return <ZoneFields {...rest} pick={pick} />;
    case "line":
      return <LineFields {...rest} pick={pick} />;
    case "joint":
      return <JointFields {...rest} pick={pick} />;
    case "face":
      return <FaceFields {...rest} pick={pick} />;
    default:
      return null;
  }
}
