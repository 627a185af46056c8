import { lazy, Suspense, useCallback, useEffect, useId, useMemo, useRef, useState } from "react";
import type { Design } from "../../design.ts";
import type { Finding } from "../../findings/finding.ts";
import type { Point } from "../../geometry/point.ts";
import { addLine } from "../../project/editing/lines.ts";
import { heading } from "../../scene/views/extent.ts";
import type { SiteState } from "../../site/journal/fold.ts";
import type { PlaneKind } from "../../site/survey/packing.ts";
import { DrawControls } from "../edit/draw/DrawControls.tsx";
import { DrawPrompt } from "../edit/draw/DrawPrompt.tsx";
import { faceToDrawOn } from "../edit/draw/face-to-draw-on.ts";
import { useDraw } from "../edit/draw/use-draw.ts";
import { GhostOverlay } from "../edit/GhostOverlay.tsx";
import type { Ghost } from "../edit/handles/handle.ts";
import { removalOf } from "../edit/removal.ts";
import { useDrag } from "../edit/use-drag.ts";
import { type Jump, type Pick, pickedWith, pickKey, pickName } from "../picks/pick.ts";
import type { Edit, ProjectState } from "../sheet/use-project.ts";
import { useRested } from "../sheet/use-rested.ts";
import { useSize } from "../sheet/use-size.ts";
import { useWords } from "../words.ts";
import { centreOn, type Size, stepScale } from "./camera.ts";
import { Drawn } from "./Drawn.tsx";
import { drawElevation } from "./elevation.ts";
import { FieldStrips } from "./FieldStrips.tsx";
import { type FieldFinder, fieldAt, fieldsOf } from "./fields.ts";
import { frameOf, middleOf, NARROW, startView } from "./framing.ts";
import { pickAt } from "./hit.ts";
import { findHome } from "./home.ts";
import { LayerControls } from "./LayerControls.tsx";
import { ELEVATION_LAYERS, type Shown, USUALLY_SHOWN } from "./layers.ts";
import { PickOverlay } from "./PickOverlay.tsx";
import { usePaintedOver } from "./use-painted-over.ts";
import { usePractice } from "./use-practice.ts";
import { useView } from "./use-view.ts";
import { ViewControls } from "./ViewControls.tsx";

export interface DrawingAreaProps {
  readonly design: Design | undefined;
  /** The project's JSON, which edits are made to. */
  readonly document: unknown;
  /** Another file starts its own view; an edit keeps it. */
  readonly load: number;
  readonly findings: readonly Finding[];
  readonly pick: Pick | undefined;
  /** What the site told; undefined where nobody was asked. */
  readonly told: SiteState | undefined;
  /** The plane that was chosen to pack to. */
  readonly plane: PlaneKind | undefined;
  /** A layer that the site tells of is shown, or none any more. */
  onSite(shown: boolean): void;
  /** Further marks to show, of the finding that is open. */
  readonly marked: readonly string[];
  readonly jump: Jump | undefined;
  /** What stands in the drawing's place while there is none. */
  readonly empty: string;
  onPick(pick: Pick | undefined): void;
  /** Picks, brings into view, and rings a place of it. */
  onGo(pick: Pick, at?: Point): void;
  onEdit(edit: Edit): void;
  onPractise: ProjectState["practise"];
  onFields(finder: FieldFinder): void;
  /** How many times smaller than the wall the view is. */
  onScale(times: number): void;
}

/** Where the arrows move what is picked, with Alt held: right and up. */
const WAYS: Readonly<Record<string, readonly [number, number] | undefined>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
/** CSS pixels for a millimetre of screen: 96 to an inch. */
const SCREEN = 96 / 25.4;
/** The drawing is made anew for a scale when the hand has rested, milliseconds. */
const REST = 140;
/** Between two drawings of the symbols of findings during a drag, milliseconds. */
const SYMBOLS_APART = 120;
/** Under this height of the drawing the legend of wind starts folded: it would hide half of it. */
const LEGEND_BESIDE = 420;
const NO_SIZE: Size = { width: 0, height: 0 };

/** It brings the graphics library with it, which the page does without until it is asked for. */
const WindLegend = lazy(() => import("../wind/WindLegend.tsx"));
const SolidView = lazy(() => import("../solid/SolidView.tsx"));

export function DrawingArea({
  design,
  document,
  load,
  findings,
  pick,
  told,
  plane,
  onSite,
  marked,
  jump,
  empty,
  onPick,
  onGo,
  onEdit,
  onPractise,
  onFields,
  onScale,
}: DrawingAreaProps) {
  const { reader, w, s } = useWords();
  const help = useId();
  const host = useRef<HTMLDivElement>(null);
  const size = useSize(host) ?? NO_SIZE;
  const there = design !== undefined;
  // biome-ignore lint/correctness/useExhaustiveDependencies: an edit is drawn in the view that the file began with
  const home = useMemo(
    () =>
      design && size.width > 0 && size.height > 0
        ? { ...findHome(design, { size, reader, findings, shown: USUALLY_SHOWN }), design }
        : undefined,
    [there, load, size, reader],
  );
  const start = useMemo(() => home && startView(home, { design: home.design, size }), [home, size]);
  const homeScale = home?.elevation.scale ?? 0;
  const [scale, setScale] = useState(0);
  const [shown, setShown] = useState<Shown>(USUALLY_SHOWN);
  const [solid, setSolid] = useState(false);
  const wasSolid = useRef(false);
  useEffect(() => {
    if (wasSolid.current && !solid) host.current?.focus();
    wasSolid.current = solid;
  }, [solid]);
  // The facade follows the hand; the symbols of its findings may come a little later.
  const said = useRested(findings, SYMBOLS_APART);
  const faces = design?.facade.faces;
  const { windy, painted, says } = usePaintedOver(design, { shown, told, plane, load });
  const [dragged, setDragged] = useState<Ghost>();
  const moving = dragged !== undefined;
  // biome-ignore lint/correctness/useExhaustiveDependencies: a design that has been proven since has the same faces
  const elevation = useMemo(
    () =>
      !home ||
      !design ||
      (faces === home.design.facade.faces && scale <= homeScale && shown === USUALLY_SHOWN)
        ? home?.elevation
        : drawElevation(design, {
            scale: Math.max(scale, homeScale),
            reader,
            findings: said,
            shown,
            moving,
            ...painted,
          }),
    [home, faces, scale, homeScale, reader, said, shown, moving, painted],
  );
  const drag = useDrag({
    design,
    document,
    elevation,
    pick,
    units: reader.units,
    onEdit,
    onPick,
    onGhost: setDragged,
  });
  const draw = useDraw({ design, document, elevation, units: reader.units, onEdit, onPick });

  const show = (next: Shown): void => {
    setShown(next);
    onSite(next.has("progress") || next.has("survey"));
  };
  const addOwnLine = (): void => {
    if (!design) return;
    draw.begin(undefined);
    const face = faceToDrawOn(design, [pick?.face, camera?.face]);
    const added = addLine({ project: design.project, document }, { face });
    if (!added) return;
    onEdit(added);
    onPick({ kind: "line", ...added.added });
  };

  const { camera, setCamera, zoom, handlers } = useView({
    host,
    elevation,
    start,
    homeK: home?.camera.k ?? 1,
    size,
    onTap(at, { touch, shift }) {
      if (!design || !elevation || !camera) return;
      const [x, y] = centreOn(elevation, camera);
      const point = [x + at[0] / camera.k, y - at[1] / camera.k] as const;
      if (draw.thing) {
        draw.tap(point, camera.k);
        return;
      }
      const next = pickAt({ design, faces: elevation.faces }, point, (touch ? 14 : 6) / camera.k);
      const joins = shift && next?.kind === "opening" && pick?.kind === "opening";
      onPick(joins ? pickedWith(pick, next) : next);
    },
    onEscape: () => (draw.thing ? draw.begin(undefined) : onPick(undefined)),
    onGrab(at, touch) {
      if (!elevation || !camera) return undefined;
      const [x, y] = centreOn(elevation, camera);
      const point = [x + at[0] / camera.k, y - at[1] / camera.k] as const;
      return draw.thing ? draw.grab(point, camera.k) : drag.grab(point, camera.k, touch);
    },
    onKey({ key, altKey, shiftKey }) {
      if (key === "Delete" || key === "Backspace") {
        const removal = design && pick && removalOf(design, document, pick);
        if (removal) onEdit(removal);
        return removal !== undefined;
      }
      if (key === "Enter") return drag.next();
      const way = altKey && pick ? WAYS[key] : undefined;
      const far = shiftKey ? 10 : 1;
      if (way) drag.nudge([way[0] * far, way[1] * far]);
      // A browser would go back or forth through its pages.
      return way !== undefined;
    },
  });

  usePractice({
    design,
    document,
    handle: drag.handle,
    camera,
    drawing: { scale: Math.max(scale, homeScale), reader, findings: said, shown },
    practise: onPractise,
  });

  const k = camera?.k ?? 0;
  useEffect(() => {
    if (k === 0 || homeScale === 0) return;
    onScale(SCREEN / k);
    const rested = setTimeout(() => setScale(stepScale({ k, homeScale })), REST);
    return () => clearTimeout(rested);
  }, [k, homeScale, onScale]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: another file starts from its own whole
  useEffect(() => setCamera(undefined), [load, setCamera]);

  const fields = useMemo(() => {
    if (!home || size.width === 0) return undefined;
    const [x, y] = centreOn(home.elevation, home.camera);
    const half = { x: size.width / 2 / home.camera.k, y: size.height / 2 / home.camera.k };
    return fieldsOf({ x: [x - half.x, x + half.x], y: [y - half.y, y + half.y] }, size);
  }, [home, size]);
  useEffect(() => {
    if (!design || !home || !fields) return;
    onFields((place) => {
      const point = middleOf(design, home.elevation, place);
      return point && fieldAt(fields, point);
    });
  }, [design, home, fields, onFields]);

  const jumped = useRef<Jump>(undefined);
  useEffect(() => {
    if (!jump || jumped.current === jump || !design || !elevation || !camera) return;
    jumped.current = jump;
    const point = middleOf(design, elevation, jump.pick);
    if (!point) return;
    const [x, y] = centreOn(elevation, camera);
    const off = [Math.abs(point[0] - x) * camera.k, Math.abs(point[1] - y) * camera.k] as const;
    if (off[0] < size.width / 2 - 30 && off[1] < size.height / 2 - 30) return;
    setCamera(frameOf(elevation, { face: jump.pick.face, size }));
  }, [jump, design, elevation, camera, size, setCamera]);

  const picked = useMemo(
    () => [
      ...(pick?.kind === "opening" ? (pick.with ?? []).map(({ id }) => id) : []),
      ...(pick && pick.kind !== "face" && pick.kind !== "zone" && pick.kind !== "joint" ? [pick.id] : []),
      ...marked,
    ],
    [pick, marked],
  );
  const toPixels = useCallback(
    (x: number, y: number): readonly [number, number] => {
      if (!elevation || !camera) return [0, 0];
      const [cx, cy] = centreOn(elevation, camera);
      return [size.width / 2 + (x - cx) * camera.k, size.height / 2 - (y - cy) * camera.k];
    },
    [elevation, camera, size],
  );
  const dx = pick && elevation?.faces.find(({ face }) => face.id === pick.face)?.dx;
  const ghost = draw.ghost ?? dragged;
  const ghostDx = ghost && elevation?.faces.find(({ face }) => face.id === ghost.face)?.dx;
  const mark = drag.held?.mark;
  const held = mark && toPixels(mark[0] + (dx ?? 0), mark[1]);
  const ringed = jump?.at && pick && pickKey(jump.pick) === pickKey(pick) ? jump.at : undefined;
  const ring = ringed && dx !== undefined && !ghost && toPixels(ringed[0] + dx, ringed[1]);
  const origin = toPixels(0, 0);
  const drawnScale = elevation?.scale ?? 1;
  const view = `translate(${origin[0]} ${origin[1]}) scale(${(camera?.k ?? 0) / drawnScale})`;
  const onHost = {
    width: size.width,
    height: size.height,
    viewBox: `0 0 ${size.width} ${size.height}`,
  };

  return (
    <section className="drawing-area" aria-label={w("page.drawing")}>
      <p id={help} className="unseen">
        {w("page.drawing.keys")}
      </p>
      <div
        ref={host}
        className={`drawing-host${draw.thing ? " drawing-anew" : ""}${solid && design ? " drawing-waits" : ""}`}
        role="application"
        aria-label={w("page.drawing.elevation")}
        aria-describedby={help}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is moved by keys; the item list says what is on it
        tabIndex={0}
        {...handlers}
      >
        {elevation && camera ? (
          <>
            {elevation.parts.map((part) => (
              <svg key={part.key} className="drawing drawing-light leaf" {...onHost} aria-hidden="true">
                <g transform={view}>
                  <Drawn
                    layers={part.layers}
                    picked={picked}
                    transform={`translate(${part.dx * drawnScale} 0)`}
                  />
                </g>
              </svg>
            ))}
            <svg className="drawing drawing-light leaf" {...onHost} aria-hidden="true">
              {design && ghost && ghostDx !== undefined && (
                <GhostOverlay design={design} ghost={ghost} toPixels={(x, y) => toPixels(x + ghostDx, y)} />
              )}
              {design && pick && dx !== undefined && !ghost && (
                <PickOverlay
                  design={design}
                  pick={pick}
                  size={size}
                  toPixels={(x, y) => toPixels(x + dx, y)}
                />
              )}
              {ring && <circle className="ringed" cx={ring[0]} cy={ring[1]} r="9" />}
              {held && dx !== undefined && !ghost && (
                <circle className="held-part" cx={held[0]} cy={held[1]} r="6" />
              )}
              {fields && <FieldStrips fields={fields} size={size} toPixels={toPixels} />}
            </svg>
          </>
        ) : (
          <p className="empty">{empty}</p>
        )}
      </div>
      {design && draw.thing && (
        <DrawPrompt
          key={draw.thing}
          draw={draw}
          thing={draw.thing}
          face={faceToDrawOn(design, [pick?.face, camera?.face])}
          onLeave={() => host.current?.focus()}
        />
      )}
      {solid && design && (
        <Suspense fallback={<p className="solid-waits">{w("page.solid.busy")}</p>}>
          <SolidView {...{ design, pick, marked, jump, onPick }} onDeveloped={() => setSolid(false)} />
        </Suspense>
      )}
      {elevation && design && !solid && (
        <LayerControls layers={ELEVATION_LAYERS} shown={shown} says={says && w(says)} onShow={show} />
      )}
      {windy && shown.has("wind") && !solid && (
        <Suspense>
          <WindLegend
            design={windy}
            uses={painted.uses}
            open={size.width >= NARROW && size.height >= LEGEND_BESIDE}
            onGo={onGo}
          />
        </Suspense>
      )}
      {elevation && design && !solid && (
        <div className="sheet-edge">
          <DrawControls draw={draw} onLine={addOwnLine} />
          <ViewControls
            faces={elevation.faces.map(({ face }) => face)}
            onSolid={() => {
              draw.begin(undefined);
              setSolid(true);
            }}
            onAll={() => setCamera(home?.camera)}
            onFace={(face) => setCamera(frameOf(elevation, { face, size }))}
            onZoom={zoom}
          />
        </div>
      )}
      <p className="unseen" aria-live="polite">
        {design && pick
          ? w("page.picked", { name: s(pickName(design, pick)), face: heading(pick.face) })
          : ""}
      </p>
      <p className="unseen" aria-live="polite">
        {drag.says ? s(drag.says) : ""}
      </p>
    </section>
  );
}
