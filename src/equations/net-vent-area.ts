/** What a vent slot lets through once battens and mesh have taken their share. */
import { equation } from "./equation.ts";

export interface VentSlot {
  readonly slotMm: number;
  readonly battenWidthMm: number;
  readonly battenCentresMm: number;
  /** Free share of the mesh, 0 to 1. */
  readonly freeShare: number;
  /** Share left open by dirt and paint, 0 to 1. */
  readonly cleanShare: number;
}

/** Net free area per metre of wall (cm²/m). */
export function netVentArea(vent: VentSlot): number {
  const grossCm2PerM = vent.slotMm * 10;
  return grossCm2PerM * (1 - vent.battenWidthMm / vent.battenCentresMm) * vent.freeShare * vent.cleanShare;
}

export const NET_VENT_AREA = equation({
  name: "net-vent-area",
  formula: "slotMm · 10 · (1 − battenWidthMm/battenCentresMm) · freeShare · cleanShare",
  inputs: [
    { key: "slotMm", unit: "mm", range: [0, 500] },
    { key: "battenWidthMm", unit: "mm", range: [0, 300] },
    { key: "battenCentresMm", unit: "mm", range: [100, 2000] },
    { key: "freeShare", unit: "1", range: [0, 1] },
    { key: "cleanShare", unit: "1", range: [0, 1] },
  ],
  result: { unit: "cm²/m" },
  source: { document: "Own geometry" },
  work: netVentArea,
});
