/** Small IFC4 models written by hand for the tests, in any unit: attribute places after ISO 16739-1. */

export type ModelUnit = "mm" | "m" | "ft" | "in";

/** Millimetres in each; the foot and the inch as conversion-based units of the metre (exact by the agreement of 1959). */
const UNIT_MM: Readonly<Record<ModelUnit, number>> = { mm: 1, m: 1000, ft: 304.8, in: 25.4 };

export class IfcText {
  readonly lines: string[] = [];
  private readonly unit: ModelUnit;
  private readonly context: string;
  readonly world: string;

  constructor(unit: ModelUnit = "mm", { north }: { north?: readonly [number, number] } = {}) {
    this.unit = unit;
    const length = this.lengthUnit();
    const radian = this.add("IFCSIUNIT", "*", ".PLANEANGLEUNIT.", "$", ".RADIAN.");
    const units = this.add("IFCUNITASSIGNMENT", `(${length},${radian})`);
    const at = this.add("IFCAXIS2PLACEMENT3D", this.rawPoint([0, 0, 0]), "$", "$");
    const towards = north ? this.add("IFCDIRECTION", `(${north.map(real).join(",")})`) : "$";
    this.context = this.add("IFCGEOMETRICREPRESENTATIONCONTEXT", "$", "'Model'", "3", "1.E-5", at, towards);
    this.add("IFCPROJECT", guid(), "$", "'Test'", "$", "$", "$", "$", `(${this.context})`, units);
    this.world = this.add("IFCLOCALPLACEMENT", "$", at);
  }

  add(type: string, ...values: readonly string[]): string {
    this.lines.push(`#${this.lines.length + 1}= ${type}(${values.join(",")});`);
    return `#${this.lines.length}`;
  }

  text(): string {
    return [
      "ISO-10303-21;",
      "HEADER;",
      "FILE_DESCRIPTION(('ViewDefinition [CoordinationView]'),'2;1');",
      "FILE_NAME('test.ifc','2031-01-01T00:00:00',(''),(''),'','','');",
      "FILE_SCHEMA(('IFC4'));",
      "ENDSEC;",
      "DATA;",
      ...this.lines,
      "ENDSEC;",
      "END-ISO-10303-21;",
      "",
    ].join("\n");
  }

  private lengthUnit(): string {
    if (this.unit === "mm" || this.unit === "m")
      return this.add("IFCSIUNIT", "*", ".LENGTHUNIT.", this.unit === "mm" ? ".MILLI." : "$", ".METRE.");
    const metre = this.add("IFCSIUNIT", "*", ".LENGTHUNIT.", "$", ".METRE.");
    const sizes = this.add("IFCDIMENSIONALEXPONENTS", "1", "0", "0", "0", "0", "0", "0");
    const [value, name] = this.unit === "ft" ? ["0.3048", "'FOOT'"] : ["0.0254", "'INCH'"];
    const factor = this.add("IFCMEASUREWITHUNIT", `IFCRATIOMEASURE(${value})`, metre);
    return this.add("IFCCONVERSIONBASEDUNIT", sizes, ".LENGTHUNIT.", name as string, factor);
  }

  /** A length (mm) in the file's unit. */
  mm(value: number): string {
    return real(value / UNIT_MM[this.unit]);
  }

  private rawPoint(at: readonly number[]): string {
    return this.add("IFCCARTESIANPOINT", `(${at.map(real).join(",")})`);
  }

  point(at: readonly number[]): string {
    return this.add("IFCCARTESIANPOINT", `(${at.map((one) => this.mm(one)).join(",")})`);
  }

  direction(to: readonly number[]): string {
    return this.add("IFCDIRECTION", `(${to.map(real).join(",")})`);
  }

  axes(at: readonly number[], z?: readonly number[], x?: readonly number[]): string {
    return this.add(
      "IFCAXIS2PLACEMENT3D",
      this.point(at),
      z ? this.direction(z) : "$",
      x ? this.direction(x) : "$",
    );
  }

  place(within: string, at: readonly number[], z?: readonly number[], x?: readonly number[]): string {
    return this.add("IFCLOCALPLACEMENT", within, this.axes(at, z, x));
  }

  polyline(points: readonly (readonly number[])[]): string {
    return this.add("IFCPOLYLINE", `(${[...points, points[0]!].map((one) => this.point(one)).join(",")})`);
  }

  closed(points: readonly (readonly number[])[]): string {
    return this.add("IFCARBITRARYCLOSEDPROFILEDEF", ".AREA.", "$", this.polyline(points));
  }

  rectangle(x: number, y: number, at: readonly [number, number]): string {
    const place = this.add("IFCAXIS2PLACEMENT2D", this.point(at), "$");
    return this.add("IFCRECTANGLEPROFILEDEF", ".AREA.", "$", place, this.mm(x), this.mm(y));
  }

  swept(profile: string, depth: number, place = "$", along: readonly number[] = [0, 0, 1]): string {
    return this.add("IFCEXTRUDEDAREASOLID", profile, place, this.direction(along), this.mm(depth));
  }

  /** A body of shapes. */
  body(type: string, ...items: readonly string[]): string {
    const shape = this.shape(type, ...items);
    return this.add("IFCPRODUCTDEFINITIONSHAPE", "$", "$", `(${shape})`);
  }

  shape(type: string, ...items: readonly string[]): string {
    return this.add("IFCSHAPEREPRESENTATION", this.context, "'Body'", `'${type}'`, `(${items.join(",")})`);
  }

  wall(name: string, place: string, body: string, { external }: { external?: boolean } = {}): string {
    const wall = this.add("IFCWALL", guid(), "$", `'${name}'`, "$", "$", place, body, "$", "$");
    if (external !== undefined) {
      const value = `IFCBOOLEAN(.${external ? "T" : "F"}.)`;
      const single = this.add("IFCPROPERTYSINGLEVALUE", "'IsExternal'", "$", value, "$");
      const set = this.add("IFCPROPERTYSET", guid(), "$", "'Pset_WallCommon'", "$", `(${single})`);
      this.add("IFCRELDEFINESBYPROPERTIES", guid(), "$", "$", "$", `(${wall})`, set);
    }
    return wall;
  }

  opening(
    wall: string,
    place: string,
    body: string,
    fill?: { type: "IFCWINDOW" | "IFCDOOR"; name: string },
  ): string {
    const opening = this.add(
      "IFCOPENINGELEMENT",
      guid(),
      "$",
      "'void'",
      "$",
      "$",
      place,
      body,
      "$",
      ".OPENING.",
    );
    this.add("IFCRELVOIDSELEMENT", guid(), "$", "$", "$", wall, opening);
    if (fill) {
      const by = this.add(
        fill.type,
        guid(),
        "$",
        `'${fill.name}'`,
        ...Array(5).fill("$"),
        "$",
        "$",
        "$",
        "$",
        "$",
      );
      this.add("IFCRELFILLSELEMENT", guid(), "$", "$", "$", opening, by);
    }
    return opening;
  }

  /** An upright wall as most programs write it: its section in plan, raised; the outer side runs from `from` along `along`. */
  plainWall({
    name,
    from,
    along,
    length,
    thickness = 300,
    height = 2600,
    external,
  }: {
    name: string;
    from: readonly [number, number, number?];
    along: readonly [number, number];
    length: number;
    thickness?: number;
    height?: number;
    external?: boolean;
  }): {
    wall: string;
    place: string;
    hole: (x: number, y: number, width: number, high: number) => [string, string];
  } {
    const place = this.place(this.world, [from[0], from[1], from[2] ?? 0], [0, 0, 1], [...along, 0]);
    const profile = this.rectangle(length, thickness, [length / 2, thickness / 2]);
    const wall = this.wall(name, place, this.body("SweptSolid", this.swept(profile, height)), {
      ...(external !== undefined && { external }),
    });
    return {
      wall,
      place,
      // Swept through the thickness, from a little before the outer side to a little behind the inner one.
      hole: (x, y, width, high) => [
        this.place(place, [x, -50, y], [0, 1, 0], [1, 0, 0]),
        this.body(
          "SweptSolid",
          this.swept(this.rectangle(width, high, [width / 2, -high / 2]), thickness + 100),
        ),
      ],
    };
  }
}

function real(value: number): string {
  const text = value.toFixed(9).replace(/0+$/, "");
  return text === "-0." ? "0." : text;
}

let ids = 0;

function guid(): string {
  ids += 1;
  return `'${ids.toString(36).toUpperCase().padStart(22, "0")}'`;
}

/** Four walls round a rectangle, the long ones running through: the short ones stop at the long ones' inner sides. */
export function box(ifc: IfcText, { x = 0, y = 0, width = 6000, depth = 4000, thickness = 300 } = {}) {
  const one = (
    name: string,
    from: readonly [number, number],
    along: readonly [number, number],
    length: number,
  ) => ifc.plainWall({ name, from, along, length, thickness });
  return {
    front: one("front", [x, y], [1, 0], width),
    right: one("right", [x + width, y + thickness], [0, 1], depth - 2 * thickness),
    back: one("Back wall:1", [x + width, y + depth], [-1, 0], width),
    left: one("left", [x, y + depth - thickness], [0, -1], depth - 2 * thickness),
  };
}
