/** What of a project's wind a pack reads, and what is missing of it. */
import type { Basis, Working, WorkingInput } from "../../findings/finding.ts";
import type { Project } from "../../project/schema/project.ts";
import { message } from "../../text/message.ts";
import { weakest } from "./held.ts";
import type { Lack } from "./pack.ts";

export type SiteWind = NonNullable<Project["site"]["wind"]>;

const AT = "/site/wind";

export function lack(field: string, key: string): Lack {
  return { path: field.startsWith("/") ? field : `${AT}/${field}`, key: `structure.lack.${key}` };
}

export interface Building {
  readonly heightM: number;
  readonly planM: readonly [lesser: number, greater: number];
}

/** Height and plan of the building; what of them is missing goes to `lacks`. */
export function buildingOf({ roofHeight, plan }: SiteWind, lacks: Lack[]): Building | undefined {
  if (roofHeight === undefined) lacks.push(lack("roofHeight", "roof-height"));
  if (plan === undefined) lacks.push(lack("plan", "plan"));
  if (roofHeight === undefined || plan === undefined) return undefined;
  const [a, b] = plan;
  return { heightM: roofHeight / 1000, planM: [Math.min(a, b) / 1000, Math.max(a, b) / 1000] };
}

/** The terrain’s row of a pack’s table; a word of another code is as good as none. */
export function terrainOf<Row>(
  { terrain }: SiteWind,
  table: Readonly<Record<string, Row>>,
  { lacks, key }: { readonly lacks: Lack[]; readonly key: string },
): Row | undefined {
  const row = terrain === undefined ? undefined : table[terrain];
  if (row === undefined) lacks.push(lack("terrain", key));
  return row;
}

export interface Term {
  readonly symbol: string;
  /** Names the message `structure.input.<meaning>`. */
  readonly meaning: string;
  readonly value: number;
  readonly unit: string;
  readonly basis: Basis;
}

/** The working of a pressure, and the weakest basis of its inputs. */
export function pressureWorking(
  formula: string,
  terms: readonly Term[],
  substituted: string,
): { working: Working; basis: Basis } {
  const inputs = terms.map(
    ({ symbol, meaning, value, unit, basis }): WorkingInput => ({
      symbol,
      meaning: message(`structure.input.${meaning}`),
      value,
      unit,
      basis,
    }),
  );
  return {
    working: { formula, inputs, substituted },
    basis: weakest(...inputs.map(({ basis }) => basis)),
  };
}
