import { commonDivisor } from "./divisor.ts";

/** Stock by its price and number; what each is worth comes apart, as it changes with the measure. */
export interface Cover {
  /** Least cost of stock worth `need`, parts of one allowed; all of it where there is too little. */
  cheapest(need: number, worth: ArrayLike<number>): number;
  /** Raises a bound to the next sum that whole pieces of stock can cost. */
  roundUp(bound: number): number;
}

/** The fractional cover of a need by priced stock of limited number. */
export function coverOf(stock: readonly { readonly cost: number; readonly count: number }[]): Cover {
  const unit = costUnit(stock.map((one) => one.cost));
  const used = new Uint8Array(stock.length);
  return {
    cheapest(need, worth) {
      used.fill(0);
      let cost = 0;
      let open = need;
      while (open > 1e-12) {
        const next = cheapestLeft(stock, worth, used);
        const one = stock[next];
        if (one === undefined) break;
        used[next] = 1;
        const value = worth[next] ?? 0;
        const count = Math.min(open / value, one.count);
        cost += count * one.cost;
        open -= count * value;
      }
      return cost;
    },
    roundUp: (bound) => (unit === undefined ? bound : Math.ceil(bound / unit - 1e-9) * unit),
  };
}

function cheapestLeft(
  stock: readonly { readonly cost: number }[],
  worth: ArrayLike<number>,
  used: ArrayLike<number>,
): number {
  let best = -1;
  let least = Number.POSITIVE_INFINITY;
  for (let index = 0; index < stock.length; index++) {
    const value = worth[index] ?? 0;
    if (used[index] === 1 || value <= 0) continue;
    const rate = (stock[index]?.cost ?? 0) / value;
    if (rate < least) {
      least = rate;
      best = index;
    }
  }
  return best;
}

/** The largest amount that divides all costs, if they lie on a millionth. */
function costUnit(costs: readonly number[]): number | undefined {
  const scale = 1e6;
  const scaled = costs.map((cost) => Math.round(cost * scale));
  const exact = costs.every((cost, index) => Math.abs(cost * scale - (scaled[index] ?? 0)) < 1e-3);
  return exact ? commonDivisor(scaled) / scale : undefined;
}
