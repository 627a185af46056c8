/** The one-page light proof of each zone whose joints let light on the membrane. */
import { type ProofInput, proofContext } from "../../proof/context.ts";
import { zoneLights } from "../../proof/light/zone-light.ts";
import { gapsForLimit } from "../../proof/light-dose.ts";
import type { Scene } from "../../scene/model.ts";
import { lightProof } from "../../scene/views/light-proof.ts";
import { type Message, message } from "../../text/message.ts";

export interface LightSheet {
  readonly name: string;
  readonly type: Message;
  readonly scenes: readonly Scene[];
}

export function lightSheets({
  project,
  facade,
  demands,
}: Pick<ProofInput, "project" | "facade" | "demands">): LightSheet[] {
  const limit = project.limits.membrane?.maxUvPerYear?.value;
  const lights = zoneLights(proofContext({ project, facade, demands })) ?? [];
  return lights.flatMap((light) => {
    const gaps = limit === undefined ? [] : gapsForLimit(light, limit);
    const scene = lightProof({ light, limit, gaps });
    const { face, zone } = light.view.where;
    return scene
      ? [{ name: `light-${face}-${zone}`, type: message("light.sheet.document"), scenes: [scene] }]
      : [];
  });
}
