import { useWords } from "../words.ts";
import type { Layer, Shown } from "./layers.ts";
import "./layer-controls.css";

/** In the corner of the drawing: what it shows, each layer a press away. */
export function LayerControls({
  layers,
  shown,
  says,
  onShow,
}: {
  layers: readonly Layer[];
  shown: Shown;
  /** Why a layer that is shown has nothing to show. */
  says?: string | undefined;
  onShow: (shown: Shown) => void;
}) {
  const { w } = useWords();
  return (
    <>
      <fieldset className="layer-controls">
        <legend className="unseen">{w("page.layers")}</legend>
        <span aria-hidden="true">{w("page.layers")}</span>
        {layers.map((layer) => (
          <button
            type="button"
            key={layer}
            aria-pressed={shown.has(layer)}
            onClick={() => {
              const next = new Set(shown);
              if (!next.delete(layer)) next.add(layer);
              onShow(next);
            }}
          >
            {w(`page.layer.${layer}`)}
          </button>
        ))}
      </fieldset>
      <p className="layer-says" role="status">
        {says}
      </p>
    </>
  );
}
