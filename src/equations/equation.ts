/** What every published equation carries beside its function, so that a reader can list it and work it by hand. */

export interface EquationInput<Key extends string = string> {
  readonly key: Key;
  readonly unit: string;
  /** Least and most value for which the source stands, both included. */
  readonly range: readonly [least: number, most: number];
}

export interface EquationSource {
  readonly document: string;
  readonly clause?: string;
}

/** What inputs must keep between them, each being in its own range. */
interface Together<Key extends string> {
  readonly keys: readonly Key[];
  /** In symbols, with the keys of the inputs. */
  readonly condition: string;
  readonly holds: (inputs: Readonly<Record<Key, number>>) => boolean;
}

interface EquationFields<Key extends string> {
  /** Words joined by hyphens: how a reader asks for it. */
  readonly name: string;
  /** In symbols, with the keys of the inputs. */
  readonly formula: string;
  readonly inputs: readonly EquationInput<Key>[];
  readonly together?: Together<Key>;
  readonly result: { readonly unit: string };
  readonly source: EquationSource;
  readonly work: (inputs: Readonly<Record<Key, number>>) => number;
}

/** The value; or which inputs are missing and which lie outside the range that the source stands for. */
export type Reckoned =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly missing: readonly string[]; readonly outside: readonly string[] };

export interface Equation extends Omit<EquationFields<string>, "work" | "together"> {
  readonly together?: Pick<Together<string>, "keys" | "condition">;
  /** Works it with named numbers, such as those typed on a command line. */
  readonly reckon: (inputs: Readonly<Record<string, number>>) => Reckoned;
}

/** Makes the record of an equation from its function. */
export function equation<const Key extends string>(fields: EquationFields<Key>): Equation {
  const { work, ...record } = fields;
  return {
    ...record,
    reckon: (given) => {
      const keys = fields.inputs.map(({ key }) => key);
      const missing = keys.filter((key) => !Number.isFinite(given[key]));
      const outside = fields.inputs
        .filter(({ key, range }) => !missing.includes(key) && !within(given[key], range))
        .map(({ key }) => key);
      if (missing.length > 0 || outside.length > 0) return { ok: false, missing, outside };
      const whole = given as Readonly<Record<Key, number>>;
      const { together } = fields;
      if (together && !together.holds(whole)) return { ok: false, missing, outside: together.keys };
      return { ok: true, value: work(whole) };
    },
  };
}

function within(value: number | undefined, [least, most]: readonly [number, number]): boolean {
  return value !== undefined && value >= least && value <= most;
}
