/** The build-up as it stands: axonometric, layer by layer, under the sun of a day and an hour. */
import { useEffect, useId, useMemo, useRef, useState } from "react";
import type { Design } from "../../design.ts";
import { LayerControls } from "../drawing/LayerControls.tsx";
import { type Shown, SOLID_LAYERS } from "../drawing/layers.ts";
import { type Jump, type Pick, pickOfMark } from "../picks/pick.ts";
import { useSize } from "../sheet/use-size.ts";
import { useWords } from "../words.ts";
import { lookingAt } from "./looking-at.ts";
import { inksOfPage } from "./materials.ts";
import { between, framing, nearer, type Orbit } from "./orbit.ts";
import { cornersInPlane, cornersOf } from "./plane.ts";
import { SunControls } from "./SunControls.tsx";
import { createSolidScene, type SolidScene } from "./scene.ts";
import "./solid.css";
import { type Moment, sunOver } from "./sun.ts";
import { useInks } from "./use-inks.ts";
import { useOrbit } from "./use-orbit.ts";
import { useUnfolded } from "./use-unfolded.ts";

export interface SolidViewProps {
  readonly design: Design;
  readonly pick: Pick | undefined;
  readonly marked: readonly string[];
  readonly jump: Jump | undefined;
  onPick(pick: Pick | undefined): void;
  /** Back to the developed elevation, once the faces lie in its plane. */
  onDeveloped(): void;
}

/** From before the first face's right end, as high as shows soffits and heads alike. */
const FROM = { roundDeg: 35, heightDeg: 22 } as const;
const LEVEL = { roundDeg: 0, heightDeg: 0 } as const;
const MARGIN = 20;
/** Midsummer, when the morning's sun reaches round a south wall. */
const AT_FIRST: Moment = { dayOfYear: 172, hour: 10 };
const ALL: Shown = new Set(SOLID_LAYERS);
const CLOSER = 1.4;

export default function SolidView({ design, pick, marked, jump, onPick, onDeveloped }: SolidViewProps) {
  const { w } = useWords();
  const help = useId();
  const host = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [scene, setScene] = useState<SolidScene | "none">();
  const size = useSize(host);
  const [shown, setShown] = useState(ALL);
  const [moment, setMoment] = useState(AT_FIRST);
  const [held, setHeld] = useState<Orbit>();
  const [part, unfold] = useUnfolded();
  const inks = useInks();
  const { facade, project } = design;

  const home = useMemo(
    () => size && framing(cornersOf(facade.faces), FROM, { ...size, margin: MARGIN }),
    [facade, size],
  );
  const flat = useMemo(
    () => size && framing(cornersInPlane(facade), LEVEL, { ...size, margin: MARGIN }),
    [facade, size],
  );
  const orbit = held ?? home;
  const sun = useMemo(() => sunOver(project, facade, moment), [project, facade, moment]);
  const picks = useMemo(() => {
    const others = marked.flatMap((mark) => pickOfMark(design, mark) ?? []);
    return pick ? [pick, ...others] : others;
  }, [design, pick, marked]);
  const layers = useMemo(() => {
    const insulated = facade.planes.some((plane) => plane.layers.some(({ kind }) => kind === "insulation"));
    return SOLID_LAYERS.filter((layer) => insulated || layer !== "insulation");
  }, [facade]);

  const change = (how: (orbit: Orbit) => Orbit): void => {
    if (home) setHeld((before) => how(before ?? home));
  };
  const handlers = useOrbit({
    host,
    onChange: change,
    onTap: (at) => onPick(scene && scene !== "none" ? scene.pickAt(at) : undefined),
    onEscape: () => onPick(undefined),
    onHome: () => setHeld(undefined),
  });

  useEffect(() => {
    host.current?.focus();
    if (!canvas.current) return;
    let made: SolidScene;
    try {
      made = createSolidScene(canvas.current);
    } catch {
      setScene("none");
      return;
    }
    setScene(made);
    return () => made.dispose();
  }, []);
  const drawn = scene === "none" ? undefined : scene;
  useEffect(() => drawn?.build(design), [drawn, design]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the inks are read from the page when its light changes
  useEffect(() => drawn?.colour(inksOfPage()), [drawn, inks]);

  const jumped = useRef(jump);
  useEffect(() => {
    if (!jump || jumped.current === jump || !size || !home) return;
    jumped.current = jump;
    setHeld((before) => lookingAt(design, jump.pick, size) ?? before);
  }, [jump, design, size, home]);

  const towards = useMemo(() => (sun.elevationDeg > 0 ? sun.towards : undefined), [sun]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another design and other inks are drawn anew
  useEffect(() => {
    if (!drawn || !orbit || !flat || !size || size.width === 0) return;
    const seen = part === 0 ? orbit : between(nearestTurn(orbit), flat, part);
    const frame = requestAnimationFrame(() =>
      drawn.draw({ orbit: seen, size, shown, sun: towards, part, picks }),
    );
    return () => cancelAnimationFrame(frame);
  }, [drawn, design, inks, orbit, flat, size, shown, towards, part, picks]);

  return (
    <div className="solid">
      <p id={help} className="unseen">
        {w("page.solid.keys")}
      </p>
      <LayerControls layers={layers} shown={shown} onShow={setShown} />
      <div
        ref={host}
        className="drawing-host solid-host"
        role="application"
        aria-label={w("page.solid.view")}
        aria-describedby={help}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the view is turned by keys; the item list says what is on it
        tabIndex={0}
        {...handlers}
      >
        {scene === "none" ? <p className="empty">{w("page.solid.none")}</p> : <canvas ref={canvas} />}
      </div>
      <SunControls moment={moment} sun={sun} onMoment={setMoment} />
      <div className="sheet-edge">
        <span />
        <fieldset className="view-controls">
          <legend className="unseen">{w("page.view")}</legend>
          <button type="button" onClick={() => unfold(onDeveloped)}>
            {w("page.solid.developed")}
          </button>
          <button type="button" onClick={() => setHeld(undefined)}>
            {w("page.view.all")}
          </button>
          <button
            type="button"
            aria-label={w("page.view.nearer")}
            onClick={() => change((o) => nearer(o, CLOSER))}
          >
            +
          </button>
          <button
            type="button"
            aria-label={w("page.view.farther")}
            onClick={() => change((o) => nearer(o, 1 / CLOSER))}
          >
            −
          </button>
        </fieldset>
      </div>
    </div>
  );
}

/** The same look, told so that the way to the front is the shorter one. */
function nearestTurn(orbit: Orbit): Orbit {
  return { ...orbit, roundDeg: orbit.roundDeg - 360 * Math.round(orbit.roundDeg / 360) };
}
