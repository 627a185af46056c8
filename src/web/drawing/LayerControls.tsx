import { useWords } from "../words.ts";
import type { Layer, Shown } from "./layers.ts";

/** In the corner of the drawing: what it shows, each layer a press away. */
export function LayerControls({
  layers,
  shown,
  onShow,
}: {
  layers: readonly Layer[];
  shown: Shown;
  onShow: (shown: Shown) => void;
}) {
  const { w } = useWords();
  return (
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
  );
}
