/** What packing a wall takes and costs, by which planes are priced. */
import { message } from "../../text/message.ts";
import type { Change, Source } from "./change.ts";

/** Each figure by its key in the file, its name among words, and the most that the file takes. */
export const PACKING_WORK = [
  { key: "minutesPerPacker", name: "minutes-packer", most: 600 },
  { key: "minutesPerSpot", name: "minutes-spot", most: 6000 },
  { key: "pricePerPacker", name: "price-packer", most: Number.POSITIVE_INFINITY },
  { key: "pricePerHour", name: "price-hour", most: Number.POSITIVE_INFINITY },
] as const;

type PackingFigure = Pick<(typeof PACKING_WORK)[number], "key" | "name">;

/** @param value minutes, or money in the project's currency */
export function setPackingWork({ project }: Source, { key, name }: PackingFigure, value: number): Change {
  return {
    operations: [
      project.packingWork
        ? { op: "add", path: `/packingWork/${key}`, value }
        : { op: "add", path: "/packingWork", value: { [key]: value } },
    ],
    says: message("project.edit.packing-work", { field: message(`page.packing-work.${name}`) }),
  };
}
