import { type MouseEvent, memo, type PointerEvent, useMemo } from "react";
import type { Scene } from "../../scene/model.ts";
import { useWords } from "../words.ts";
import { PAPER } from "./camera.ts";
import { Drawn } from "./Drawn.tsx";
import { sceneBody } from "./scene-body.ts";

/** A scene at its scale on screen, with its title under it; pressing a piece on it tells its mark, and so does going over it. */
export const ScenePicture = memo(function ScenePicture({
  scene,
  picked,
  onMark,
  onOver,
}: {
  scene: Scene;
  picked: readonly string[];
  onMark?: (mark: string) => void;
  /** Undefined where the pointer is over no piece any more. */
  onOver?: (mark: string | undefined) => void;
}) {
  const { reader, s } = useWords();
  const { layers, bounds } = useMemo(() => sceneBody(scene, reader), [scene, reader]);
  const [left, right] = bounds.x.map((x) => x * scene.scale) as [number, number];
  const [low, high] = bounds.y.map((y) => y * scene.scale) as [number, number];
  const title = s(scene.title);
  const markAt = ({ target }: MouseEvent): string | undefined =>
    (target as Element).getAttribute("data-of") ?? undefined;
  const press = (event: MouseEvent): void => {
    const mark = markAt(event);
    if (mark !== undefined) onMark?.(mark);
  };
  const over = (event: PointerEvent): void => onOver?.(markAt(event));
  return (
    <figure className="scene-picture">
      <svg
        className="drawing drawing-light"
        width={(right - left + 2) * PAPER}
        height={(high - low + 2) * PAPER}
        viewBox={`${left - 1} ${-high - 1} ${right - left + 2} ${high - low + 2}`}
        role="img"
        aria-label={title}
        {...(onMark && { onClick: press })}
        {...(onOver && { onPointerOver: over, onPointerLeave: () => onOver(undefined) })}
      >
        <Drawn layers={layers} picked={picked} />
      </svg>
      <figcaption className="sub">{title}</figcaption>
    </figure>
  );
});
