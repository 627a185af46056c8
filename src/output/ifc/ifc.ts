/**
 * The set-out facade as IFC4 (ISO 16739-1): a wall for each face with its openings, a covering for each zone made of its
 * plates and members, and the screws counted between them. Same project, same bytes.
 */

import { rectOutline } from "../../geometry/rect.ts";
import type { Project } from "../../project/schema/project.ts";
import type { Facade, FaceLayout, Fixing, Piece } from "../../setout/facade.ts";
import { allBytes } from "../pieces.ts";
import { CLASSES, propertiesOf, quantitiesOf, SCREW } from "./elements.ts";
import { globalId } from "./global-id.ts";
import {
  axes,
  body,
  facePlacement,
  northOf,
  pieceSolids,
  placed,
  type Stage,
  slab,
  units,
} from "./shapes.ts";
import { NONE, type Ref, STEP_FOOT, StepFile, stepHead, type Value, word } from "./step.ts";

/** No issue told: a moment that is none. */
const NO_DATE = "1970-01-01";

export function writeIfc(facts: { project: Project; facade: Facade }): Uint8Array {
  return allBytes(ifcPieces(facts));
}

/** The same, handed out after each face: an entity is named by those after it, by its line alone. */
export function* ifcPieces({ project, facade }: { project: Project; facade: Facade }): Generator<string> {
  const when = project.issued?.revisions.at(-1)?.when ?? NO_DATE;
  yield stepHead({ name: project.title, time: `${when}T00:00:00` });
  const model = new Model(project);
  for (const face of facade.faces) {
    model.face(face, project.structure.sheathingThickness);
    yield* model.file.taken();
  }
  model.relations();
  yield* model.file.taken();
  yield STEP_FOOT;
}

class Model {
  readonly file = new StepFile();
  private readonly project: Project;
  private readonly context: Ref;
  private readonly building: Ref;
  private readonly buildingPlace: Ref;
  private readonly contained: Ref[] = [];
  /** Products by their material. */
  private readonly made = new Map<string, Ref[]>();

  constructor(project: Project) {
    this.project = project;
    const { file } = this;
    const world = axes(file, [0, 0, 0], [0, 0, 1], [1, 0, 0]);
    const model = file.add(
      "IFCGEOMETRICREPRESENTATIONCONTEXT",
      NONE,
      "Model",
      { whole: 3 },
      1e-5,
      world,
      northOf(file, project) ?? NONE,
    );
    this.context = file.add(
      "IFCGEOMETRICREPRESENTATIONSUBCONTEXT",
      "Body",
      "Model",
      ...[{ word: "*" }, { word: "*" }, { word: "*" }, { word: "*" }],
      model,
      NONE,
      word("MODEL_VIEW"),
      NONE,
    );
    const root = file.add(
      "IFCPROJECT",
      ...this.rooted("project", project.title, project.about),
      NONE,
      NONE,
      project.revision ?? NONE,
      [model],
      units(file),
    );
    const site = file.add(
      "IFCSITE",
      ...this.rooted("site", project.site.place),
      NONE,
      this.place(NONE),
      NONE,
      NONE,
      word("ELEMENT"),
      NONE,
      NONE,
      NONE,
      NONE,
      NONE,
    );
    this.buildingPlace = this.place(NONE);
    this.building = file.add(
      "IFCBUILDING",
      ...this.rooted("building", project.title),
      NONE,
      this.buildingPlace,
      NONE,
      NONE,
      word("ELEMENT"),
      NONE,
      NONE,
      NONE,
    );
    this.aggregate("project", root, [site]);
    this.aggregate("site", site, [this.building]);
  }

  /** Where all products are, and of what. */
  relations(): void {
    const { file } = this;
    file.add("IFCRELCONTAINEDINSPATIALSTRUCTURE", ...this.rooted("contained"), this.contained, this.building);
    for (const [name, products] of this.made) {
      const material = file.add("IFCMATERIAL", name, NONE, NONE);
      file.add("IFCRELASSOCIATESMATERIAL", ...this.rooted(`material ${name}`), products, material);
    }
  }

  face(face: FaceLayout, sheathing: number): void {
    const { file } = this;
    const placement = facePlacement(file, face.frame, this.buildingPlace);
    const stage: Stage = { file, placement, context: this.context, turned: face.frame.level !== undefined };
    const wall = this.wall(face, sheathing, stage);
    const products = new Map<string, Ref>();
    for (const piece of face.pieces) products.set(piece.mark, this.piece(piece, stage));
    for (const zone of face.zones) {
      const parts = face.pieces.filter(({ zone: of, kind }) => of === zone.id && kind !== "membrane");
      const name = `${face.id} ${zone.id}`;
      const covering = file.add(
        "IFCCOVERING",
        ...this.rooted(`zone ${name}`, name, zone.cladding),
        NONE,
        placed(stage),
        NONE,
        name,
        word("CLADDING"),
      );
      this.contained.push(covering);
      this.set(`zone ${name}`, covering, "Pset_CoveringCommon", [
        ["Reference", { type: "IFCIDENTIFIER", value: name }],
      ]);
      if (parts.length > 0)
        this.aggregate(
          `zone ${name}`,
          covering,
          parts.flatMap(({ mark }) => products.get(mark) ?? []),
        );
      if (wall) file.add("IFCRELCOVERSBLDGELEMENTS", ...this.rooted(`covers ${name}`), wall, [covering]);
    }
    const inZones = new Set(face.zones.map(({ id }) => id));
    this.contained.push(
      ...face.pieces
        .filter(({ zone, kind }) => zone === undefined || !inZones.has(zone) || kind === "membrane")
        .flatMap(({ mark }) => products.get(mark) ?? []),
    );
    for (const piece of face.pieces) this.screws(piece, { products, wall, stage });
  }

  /** The sheathing as a wall, its openings voids. A soffit hangs under a roof: it has none. */
  private wall(face: FaceLayout, sheathing: number, stage: Stage): Ref | undefined {
    if (stage.turned) return undefined;
    const { file } = this;
    // The cladding reaches round corners; the wall behind it does not.
    const outline = this.project.faces.find(({ id }) => id === face.id)?.outline ?? face.outline;
    const shape = body(stage, [slab(stage, { outline, holes: [], z: [-sheathing, 0] })]);
    const wall = file.add(
      "IFCWALL",
      ...this.rooted(`face ${face.id}`, face.id),
      NONE,
      placed(stage),
      shape,
      face.code,
      word("USERDEFINED"),
    );
    this.contained.push(wall);
    this.set(`face ${face.id}`, wall, "Pset_WallCommon", [
      ["Reference", { type: "IFCIDENTIFIER", value: face.id }],
      ["IsExternal", { type: "IFCBOOLEAN", value: word("T") }],
    ]);
    for (const { id, region } of face.openings) {
      const z: readonly [number, number] = [-sheathing, 0];
      const hole = body(stage, [slab(stage, { outline: rectOutline(region), holes: [], z })]);
      const name = `${face.id} ${id}`;
      const opening = file.add(
        "IFCOPENINGELEMENT",
        ...this.rooted(`opening ${name}`, id),
        NONE,
        placed(stage),
        hole,
        id,
        word("OPENING"),
      );
      file.add("IFCRELVOIDSELEMENT", ...this.rooted(`voids ${name}`), wall, opening);
    }
    return wall;
  }

  private piece(piece: Piece, stage: Stage): Ref {
    const { file } = this;
    const { mark, kind, material } = piece;
    const { type, predefined, objectType, set } = CLASSES[kind];
    const shape = body(stage, pieceSolids(piece, stage));
    const product = file.add(
      type,
      ...this.rooted(`piece ${mark}`, mark),
      objectType ?? NONE,
      placed(stage),
      shape,
      mark,
      word(predefined),
    );
    const alike = this.made.get(material);
    if (alike) alike.push(product);
    else this.made.set(material, [product]);
    this.set(`piece ${mark}`, product, "Outerleaf_Piece", propertiesOf(piece));
    if (set) {
      this.set(`piece ${mark}`, product, `Pset_${set}Common`, [
        ["Reference", { type: "IFCIDENTIFIER", value: mark }],
      ]);
      const quantities = quantitiesOf(piece, set).map(([name, entity, value]) =>
        file.add(`IFCQUANTITY${entity}`, name, NONE, NONE, value, NONE),
      );
      this.define(
        `quantities ${mark}`,
        product,
        file.add(
          "IFCELEMENTQUANTITY",
          ...this.rooted(`base ${mark}`, `Qto_${set}BaseQuantities`),
          NONE,
          quantities,
        ),
      );
    }
    return product;
  }

  private screws(
    piece: Piece,
    { products, wall, stage }: { products: ReadonlyMap<string, Ref>; wall: Ref | undefined; stage: Stage },
  ): void {
    const { file } = this;
    const groups = new Map<string, Fixing[]>();
    for (const fixing of piece.fixings) {
      const into = products.has(fixing.into) ? fixing.into : "structure";
      const key = `${fixing.screw} ${fixing.kind} ${into}`;
      groups.set(key, [...(groups.get(key) ?? []), fixing]);
    }
    const own = products.get(piece.mark);
    for (const [key, fixings] of groups) {
      const [first] = fixings as [Fixing];
      const spec = this.project.stock.screws.find(({ id }) => id === first.screw);
      const name = `screws ${piece.mark} ${key}`;
      const fastener = file.add(
        "IFCMECHANICALFASTENER",
        ...this.rooted(name, first.screw, first.kind),
        NONE,
        placed(stage),
        NONE,
        `${piece.mark} ${key}`,
        spec?.diameter ?? NONE,
        spec?.length ?? NONE,
        SCREW,
      );
      this.contained.push(fastener);
      this.set(name, fastener, "Outerleaf_Screws", [
        ["Count", { type: "IFCINTEGER", value: { whole: fixings.length } }],
        ["Point", { type: "IFCLABEL", value: first.kind }],
        ["HoleDiameter", { type: "IFCPOSITIVELENGTHMEASURE", value: first.hole }],
        ["Into", { type: "IFCLABEL", value: first.into }],
      ]);
      const holds = products.get(first.into) ?? wall;
      if (own && holds) {
        file.add(
          "IFCRELCONNECTSWITHREALIZINGELEMENTS",
          ...this.rooted(`holds ${name}`),
          NONE,
          own,
          holds,
          [fastener],
          NONE,
        );
      }
    }
  }

  private place(within: Value): Ref {
    return this.file.add("IFCLOCALPLACEMENT", within, axes(this.file, [0, 0, 0], [0, 0, 1], [1, 0, 0]));
  }

  /** What every rooted entity begins with: its id, no history, a name and what is said of it. */
  private rooted(key: string, name?: string, about?: string): Value[] {
    return [globalId(`${this.project.title} ${key}`), NONE, name ?? NONE, about ?? NONE];
  }

  private aggregate(key: string, whole: Ref, parts: readonly Ref[]): void {
    this.file.add("IFCRELAGGREGATES", ...this.rooted(`parts ${key}`), whole, [...parts]);
  }

  private set(key: string, of: Ref, name: string, properties: readonly (readonly [string, Value])[]): void {
    const { file } = this;
    const singles = properties.map(([property, value]) =>
      file.share("IFCPROPERTYSINGLEVALUE", property, NONE, value, NONE),
    );
    this.define(
      `${name} ${key}`,
      of,
      file.add("IFCPROPERTYSET", ...this.rooted(`set ${name} ${key}`, name), singles),
    );
  }

  private define(key: string, of: Ref, set: Ref): void {
    this.file.add("IFCRELDEFINESBYPROPERTIES", ...this.rooted(`defines ${key}`), [of], set);
  }
}
