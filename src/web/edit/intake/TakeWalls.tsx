import { useMemo, useState } from "react";
import type { ModelWall, WallModel } from "../../../project/intake/ifc/model.ts";
import {
  planInto,
  planOf,
  startWithWalls,
  usualWalls,
  wallsInto,
} from "../../../project/intake/ifc/take-walls.ts";
import type { Taken } from "../../../project/intake/taken.ts";
import { heading } from "../../../scene/views/extent.ts";
import { useWords } from "../../words.ts";
import { useHelp } from "../help/use-help.tsx";
import { FacePicture, sizeForAll } from "./FacePicture.tsx";
import type { TakeDrawingProps } from "./props.ts";
import { TakenTold } from "./TakenTold.tsx";
import { TakePress } from "./TakePress.tsx";

/** The walls of a model: which are taken, and the faces that they give. */
export function TakeWalls({ model, into, onTake }: TakeDrawingProps & { model: WallModel }) {
  const { w, reader } = useWords();
  const [said, setSaid] = useState<readonly string[]>();
  const [turned, setTurned] = useState(false);
  const wallsHelp = useHelp("model-walls", w("page.intake.walls"));
  const turnedHelp = useHelp("model-turned", w("page.intake.turned"));
  const walls = said ?? usualWalls(model, into?.face).map(({ entity }) => entity);
  const chosen = walls.join(" ");
  const { units, language } = reader;
  const { plan, taken } = useMemo(() => {
    const choice = { walls: chosen === "" ? [] : chosen.split(" "), turned };
    const title = model.name.replace(/\.ifc$/i, "");
    if (into) {
      const inFace = { ...choice, face: into.face };
      const result: Taken = wallsInto(into.source, model, inFace);
      return { plan: planInto(into.source, model, inFace), taken: result };
    }
    const result: Taken = startWithWalls(model, choice, { title, display: { units, language } });
    return { plan: planOf(model, choice), taken: result };
  }, [model, into, chosen, turned, units, language]);
  const size = plan.ok ? sizeForAll(plan.faces.map(({ face }) => face)) : undefined;
  const tick = ({ entity }: ModelWall, on: boolean): void =>
    setSaid(on ? [...walls, entity] : walls.filter((one) => one !== entity));
  return (
    <>
      <fieldset className="intake-walls intake-whole">
        <legend>{w("page.intake.walls")}</legend>
        <p className="field-head">{wallsHelp.button}</p>
        {wallsHelp.note}
        <ul>
          {model.walls.map((wall) => (
            <li key={wall.entity}>
              <label>
                <input
                  type="checkbox"
                  checked={walls.includes(wall.entity)}
                  onChange={({ currentTarget }) => tick(wall, currentTarget.checked)}
                />{" "}
                {wall.name}
              </label>
            </li>
          ))}
        </ul>
      </fieldset>
      <p className="field-head intake-whole">
        <label>
          <input
            type="checkbox"
            checked={turned}
            onChange={({ currentTarget }) => setTurned(currentTarget.checked)}
          />{" "}
          {w("page.intake.turned")}
        </label>
        {turnedHelp.button}
      </p>
      {turnedHelp.note}
      {plan.ok &&
        plan.faces.map(({ id, face }) => (
          <figure key={id} className="intake-face">
            <FacePicture face={face} {...(size && { size })} />
            <figcaption>{heading(into?.face ?? id)}</figcaption>
          </figure>
        ))}
      <TakenTold taken={taken} />
      <TakePress
        taken={taken}
        says={into ? "page.intake.replace" : "page.intake.begin-walls"}
        onTake={onTake}
      />
    </>
  );
}
