import type { LengthPlan, LengthStock, SheetPlan, SheetStock } from "./model.ts";

/** What one sheet costs: as given, else its area in square metres. */
export function sheetCost(stock: SheetStock): number {
  return stock.cost ?? (stock.width * stock.height) / 1e6;
}

/** What one bar costs: as given, else its length in metres. */
export function barCost(stock: LengthStock): number {
  return stock.cost ?? stock.length / 1000;
}

/** Sum of a sheet plan over the stock that it uses. */
export function sheetPlanCost(plan: SheetPlan, stock: readonly SheetStock[]): number {
  const cost = new Map(stock.map((one) => [one.id, sheetCost(one)]));
  return tidySum(plan.sheets.map((sheet) => cost.get(sheet.stockId) ?? 0));
}

/** Sum of a length plan over the stock that it uses. */
export function lengthPlanCost(plan: LengthPlan, stock: readonly LengthStock[]): number {
  const cost = new Map(stock.map((one) => [one.id, barCost(one)]));
  return tidySum(plan.bars.map((bar) => cost.get(bar.stockId) ?? 0));
}

/** Sum cleared of the dust that decimal fractions leave, so that equal plans cost the same in any order. */
export function tidySum(values: readonly number[]): number {
  const sum = values.reduce((total, value) => total + value, 0);
  return Number(sum.toFixed(6));
}
