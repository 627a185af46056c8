/** What the rules of light need to say what they found. */
import type { Basis, WorkingInput } from "../../findings/finding.ts";
import { message } from "../../text/message.ts";

/** An input of a working; its meaning is the message `light.input.<meaning>`. */
export function lightInput(
  symbol: string,
  fields: { meaning: string; value: number; unit: string; basis: Basis },
): WorkingInput {
  const { meaning, value, unit, basis } = fields;
  return { symbol, meaning: message(`light.input.${meaning}`), value, unit, basis };
}
