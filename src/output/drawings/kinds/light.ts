/** The one-page light proof of each zone whose joints let light on the membrane. */
import { proofContext } from "../../../proof/context.ts";
import { zoneLights } from "../../../proof/light/zone-light.ts";
import { gapsForLimit } from "../../../proof/light-dose.ts";
import { lightProof } from "../../../scene/views/light-proof.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";

export function lightSheets({ design: { project, facade, demands } }: KindFacts): Drawing[] {
  const limit = project.limits.membrane?.maxUvPerYear?.value;
  const lights = zoneLights(proofContext({ project, facade, demands })) ?? [];
  return lights.flatMap((light) => {
    const gaps = limit === undefined ? [] : gapsForLimit(light, limit);
    const scene = lightProof({ light, limit, gaps });
    const { face, zone } = light.view.where;
    return scene
      ? [{ name: `light-${face}-${zone}`, type: message("light.sheet.document"), scenes: [scene], face }]
      : [];
  });
}
