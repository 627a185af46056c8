/** A compass direction, with either decimal sign; undefined where it is none. */
export function degreesIn(text: string): number | undefined {
  const value = text.trim() === "" ? Number.NaN : Number(text.trim().replace(",", "."));
  return value >= 0 && value <= 360 ? value : undefined;
}
