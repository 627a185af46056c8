import { useMemo, useState } from "react";
import type { WallModel } from "../../../project/intake/ifc/model.ts";
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
import { FacePicture, sizeForAll } from "./FacePicture.tsx";
import type { TakeDrawingProps } from "./props.ts";
import { TakenTold } from "./TakenTold.tsx";
import { TakePress } from "./TakePress.tsx";
import { WallChoice } from "./WallChoice.tsx";
import { WallsPlan } from "./WallsPlan.tsx";

/** The walls of a model: which are taken, from which side each is seen, and the faces that they give. */
export function TakeWalls({ model, into, onTake }: TakeDrawingProps & { model: WallModel }) {
  const { w, reader } = useWords();
  const [said, setSaid] = useState<readonly string[]>();
  const [turned, setTurned] = useState<readonly string[]>([]);
  const walls = said ?? usualWalls(model, into?.face).map(({ entity }) => entity);
  const chosen = walls.join(" ");
  const sides = turned.filter((entity) => walls.includes(entity)).join(" ");
  const { units, language } = reader;
  const { plan, taken } = useMemo(() => {
    const choice = { walls: parted(chosen), turned: parted(sides) };
    const title = model.name.replace(/\.ifc$/i, "");
    if (into) {
      const inFace = { ...choice, face: into.face };
      const result: Taken = wallsInto(into.source, model, inFace);
      return { plan: planInto(into.source, model, inFace), taken: result };
    }
    const result: Taken = startWithWalls(model, choice, { title, display: { units, language } });
    return { plan: planOf(model, choice), taken: result };
  }, [model, into, chosen, sides, units, language]);
  const size = plan.ok ? sizeForAll(plan.faces.map(({ face }) => face)) : undefined;
  const turnedNames = model.walls.filter(({ entity }) => turned.includes(entity)).map(({ name }) => name);
  return (
    <>
      <WallChoice walls={model.walls} chosen={walls} turned={turned} onChoose={setSaid} onTurn={setTurned} />
      {plan.ok && <WallsPlan faces={plan.faces} />}
      {plan.ok &&
        plan.faces.map(({ id, face, walls: of }) => (
          <figure key={id} className="intake-face">
            <FacePicture face={face} {...(size && { size })} />
            <figcaption>
              {heading(into?.face ?? id)}
              {of.some((name) => turnedNames.includes(name)) && ` · ${w("page.intake.turned")}`}
            </figcaption>
          </figure>
        ))}
      <TakenTold taken={taken} />
      <TakePress
        taken={taken}
        says={w(into ? "page.intake.replace" : "page.intake.begin-walls")}
        onTake={onTake}
      />
    </>
  );
}

/** Entities that were joined to be told apart by their text: a memo asks whether they are the same. */
function parted(entities: string): readonly string[] {
  return entities === "" ? [] : entities.split(" ");
}
