import type { ModelWall } from "../../../project/intake/ifc/model.ts";
import { useWords } from "../../words.ts";
import { useHelp } from "../help/use-help.tsx";

/** The walls of a model, each to be ticked, and where it is, to be turned so that its other side is the one that is seen. */
export function WallChoice({
  walls,
  chosen,
  turned,
  onChoose,
  onTurn,
}: {
  walls: readonly ModelWall[];
  /** Entities. */
  chosen: readonly string[];
  turned: readonly string[];
  onChoose: (entities: readonly string[]) => void;
  onTurn: (entities: readonly string[]) => void;
}) {
  const { w } = useWords();
  const wallsHelp = useHelp("model-walls", w("page.intake.walls"));
  const turnedHelp = useHelp("model-turned", w("page.intake.turn"));
  return (
    <fieldset className="intake-walls intake-whole">
      <legend>{w("page.intake.walls")}</legend>
      <p className="field-head">
        {wallsHelp.button}
        <span>
          {w("page.intake.turn")} {turnedHelp.button}
        </span>
      </p>
      {wallsHelp.note}
      {turnedHelp.note}
      <ul>
        {walls.map(({ entity, name }) => {
          const isChosen = chosen.includes(entity);
          return (
            <li key={entity}>
              <label>
                <input
                  type="checkbox"
                  checked={isChosen}
                  onChange={() => onChoose(toggled(chosen, entity))}
                />{" "}
                {name}
              </label>
              <button
                type="button"
                aria-label={w("page.intake.turn-wall", { wall: name })}
                aria-pressed={isChosen && turned.includes(entity)}
                disabled={!isChosen}
                onClick={() => onTurn(toggled(turned, entity))}
              >
                {w("page.intake.turn")}
              </button>
            </li>
          );
        })}
      </ul>
    </fieldset>
  );
}

function toggled(entities: readonly string[], one: string): readonly string[] {
  return entities.includes(one) ? entities.filter((other) => other !== one) : [...entities, one];
}
