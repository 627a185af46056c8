import { type MouseEvent, memo, useMemo } from "react";
import type { Scene } from "../../scene/model.ts";
import { useWords } from "../words.ts";
import { PAPER } from "./camera.ts";
import { Drawn } from "./Drawn.tsx";
import { sceneBody } from "./scene-body.ts";

/** A scene at its scale on screen, with its title under it; pressing a piece on it tells its mark. */
export const ScenePicture = memo(function ScenePicture({
  scene,
  picked,
  onMark,
}: {
  scene: Scene;
  picked: readonly string[];
  onMark?: (mark: string) => void;
}) {
  const { reader, s } = useWords();
  const { layers, bounds } = useMemo(() => sceneBody(scene, reader), [scene, reader]);
  const [left, right] = bounds.x.map((x) => x * scene.scale) as [number, number];
  const [low, high] = bounds.y.map((y) => y * scene.scale) as [number, number];
  const title = s(scene.title);
  const press = (event: MouseEvent): void => {
    const mark = (event.target as Element).getAttribute("data-of");
    if (mark) onMark?.(mark);
  };
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
      >
        <Drawn layers={layers} picked={picked} />
      </svg>
      <figcaption className="sub">{title}</figcaption>
    </figure>
  );
});
