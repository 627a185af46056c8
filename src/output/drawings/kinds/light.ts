/** The one-page light proof of each zone whose joints let light on the membrane. */
import { proofContext } from "../../../proof/context.ts";
import { type ShownLight, zoneLights } from "../../../proof/light/zone-light.ts";
import { gapsForLimit } from "../../../proof/light-dose.ts";
import { lightProof } from "../../../scene/views/light-proof.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { oneByOne } from "../grouped.ts";

export function lightSheets({ design: { project, facade, demands }, memo }: KindFacts): Iterable<Drawing> {
  const limit = project.limits.membrane?.maxUvPerYear?.value;
  const lights = zoneLights(proofContext({ project, facade, demands })) ?? [];
  return oneByOne(lights, ({ view: { where, cladding }, bare, average, slots, worst }) => {
    // A year of light is kept beside its face, and long as text.
    memo.byThemselves([bare, average, slots, ...(worst ? [worst] : [])]);
    return memo.recall(lightOf, { view: { where, cladding }, bare, average, slots, worst, limit });
  });
}

interface From extends ShownLight {
  readonly limit: number | undefined;
}

function lightOf({ limit, ...light }: From): Drawing[] {
  const gaps = limit === undefined ? [] : gapsForLimit(light, limit);
  const scene = lightProof({ light, limit, gaps });
  const { face, zone } = light.view.where;
  return scene
    ? [{ name: `light-${face}-${zone}`, type: message("light.sheet.document"), scenes: [scene], face }]
    : [];
}
