/** What the fields of a picked thing are given. */
import type { Design } from "../../../design.ts";
import type { Pick } from "../../picks/pick.ts";
import type { Edit } from "../../sheet/use-project.ts";

export interface FieldsProps<Kind extends Pick["kind"] = Pick["kind"]> {
  readonly design: Design;
  readonly pick: Extract<Pick, { kind: Kind }>;
  readonly document: unknown;
  onEdit(edit: Edit): void;
  onPick(pick: Pick): void;
}
