/** The marks of findings as shapes: ■ fails, ▲ attention, ◇ cannot be evaluated, ◌ provisional, ✓ holds. */
import type { Point } from "../geometry/point.ts";
import type { SymbolItem } from "./model.ts";
import type { Shape } from "./shapes.ts";

export function symbolMarks({ at, symbol, size }: SymbolItem, scale: number): Shape[] {
  const half = size / 2 / scale;
  const point = (x: number, y: number): Point => [at[0] + x * half, at[1] + y * half];
  switch (symbol) {
    case "fail": {
      const square = [point(-0.9, -0.9), point(0.9, -0.9), point(0.9, 0.9), point(-0.9, 0.9)];
      return [{ shape: "path", closed: true, fill: "red", line: "detail", parts: [square] }];
    }
    case "attention": {
      const triangle = [point(-1, -0.85), point(1, -0.85), point(0, 0.95)];
      return [{ shape: "path", closed: true, fill: "ink", line: "detail", parts: [triangle] }];
    }
    case "cannot evaluate": {
      const lozenge = [point(0, -1), point(1, 0), point(0, 1), point(-1, 0)];
      return [{ shape: "path", closed: true, fill: "paper", line: "visible", parts: [lozenge] }];
    }
    case "provisional":
      // Eight short arcs: a dotted ring at any size.
      return Array.from({ length: 8 }, (_, i): Shape => {
        return {
          shape: "arc",
          centre: at,
          radius: half * 0.9,
          fromDeg: i * 45,
          toDeg: i * 45 + 22.5,
          line: "visible",
        };
      });
    case "pass": {
      const tick = [point(-0.9, 0), point(-0.3, -0.7), point(0.9, 0.8)];
      return [{ shape: "path", closed: false, line: "visible", parts: [tick] }];
    }
  }
}
