import type { Design } from "../../../design.ts";
import type { Change } from "../../../project/editing/change.ts";
import {
  removeRelief,
  setHourlyPressure,
  setPlanSide,
  setRoofHeight,
  setWindCode,
  setWindFigure,
  setWindWord,
} from "../../../project/editing/wind.ts";
import { STRUCTURE_CODES, TERRAINS_OF } from "../../../project/schema/wind.ts";
import type { Edit } from "../../sheet/use-project.ts";
import { useWords } from "../../words.ts";
import { sourceOf } from "../handles/handle.ts";
import { ChoiceField } from "./ChoiceField.tsx";
import { LengthField } from "./LengthField.tsx";
import { SourcedField } from "./SourcedField.tsx";

const PA_PER_KPA = 1000;
const M_PER_S_PER_MPH = 0.44704;
/** What the file takes, in its own units: metres per second, kilopascals, per cent. */
const SPEEDS = [10, 120] as const;
const PRESSURES = [0.1, 3] as const;
const RELIEFS = [0, 60] as const;
const TOPOGRAPHIES = [1, 4] as const;

/** The structural code and what of the place it reckons wind with. */
export function WindFields({
  design,
  document,
  onEdit,
}: {
  design: Design;
  document: unknown;
  onEdit: (edit: Edit) => void;
}) {
  const { w, reader } = useWords();
  const source = sourceOf(design, document);
  const { wind, windPressure1in50Pa } = design.project.site;
  const doIt = (change: Change | undefined): void => {
    if (change) onEdit(change);
  };
  const choice = <Word extends string>(words: readonly Word[], family: string) =>
    words.map((value) => ({ value, text: w(`page.wind-fields.${family}-${value.replace(" ", "-")}`) }));
  const none = { value: "" as const, text: w("page.wind-fields.not-chosen") };
  const terrains = wind ? TERRAINS_OF[wind.code] : [];
  const terrain = wind?.terrain !== undefined && terrains.includes(wind.terrain) ? wind.terrain : undefined;
  const canada = wind?.code === "canada-nbc-2020";
  const mph = reader.units === "feet-inch" && (wind?.code.startsWith("usa") ?? false);
  const perSpeed = mph ? M_PER_S_PER_MPH : 1;
  const speeds = SPEEDS.map((speed) => Math.round(speed / perSpeed)) as [number, number];
  return (
    <form
      className="place-fields wind-fields"
      aria-label={w("page.wind-fields")}
      onSubmit={(event) => event.preventDefault()}
    >
      <ChoiceField
        label={w("page.wind-fields.code")}
        help="wind-code"
        value={wind?.code ?? ""}
        choices={[...(wind ? [] : [none]), ...choice(STRUCTURE_CODES, "code")]}
        onChoose={(code) => doIt(code === "" ? undefined : setWindCode(source, code))}
      />
      {wind && (
        <>
          <ChoiceField
            label={w("page.wind-fields.terrain")}
            help="wind-terrain"
            value={terrain ?? ""}
            choices={[...(terrain === undefined ? [none] : []), ...choice(terrains, "terrain")]}
            onChoose={(word) => doIt(word === "" ? undefined : setWindWord(source, "terrain", word))}
          />
          {canada ? (
            <SourcedField
              label={w("page.wind-fields.pressure")}
              help="wind-pressure"
              held={windPressure1in50Pa}
              per={PA_PER_KPA}
              within={PRESSURES}
              onChange={(typed) => doIt(setHourlyPressure(source, typed))}
            />
          ) : (
            <SourcedField
              key={wind.code}
              label={w(`page.wind-fields.speed-${speedOf(wind.code)}`, { unit: mph ? "mph" : "m/s" })}
              help="wind-speed"
              held={wind.speedMPerS}
              per={perSpeed}
              within={speeds}
              onChange={(typed) => doIt(setWindFigure(source, "speedMPerS", typed))}
            />
          )}
          <LengthField
            label={w("page.wind-fields.roof-height")}
            help="wind-roof-height"
            value={wind.roofHeight ?? 0}
            least={1}
            onChange={(mm) => doIt(setRoofHeight(source, mm))}
          />
          {([0, 1] as const).map((side) => (
            <LengthField
              key={side}
              label={w(`page.wind-fields.plan-${side}`)}
              help="wind-plan"
              value={wind.plan?.[side] ?? 0}
              least={1}
              onChange={(mm) => doIt(setPlanSide(source, side, mm))}
            />
          ))}
          {canada && (
            <ChoiceField
              label={w("page.wind-fields.importance")}
              help="wind-importance"
              value={wind.importance ?? "normal"}
              choices={choice(["low", "normal", "high"] as const, "importance")}
              onChoose={(word) => doIt(setWindWord(source, "importance", word))}
            />
          )}
          <ChoiceField
            label={w("page.wind-fields.enclosure")}
            help="wind-enclosure"
            value={wind.enclosure ?? "enclosed"}
            choices={choice(["enclosed", "partially enclosed"] as const, "enclosure")}
            onChoose={(word) => doIt(setWindWord(source, "enclosure", word))}
          />
          <SourcedField
            label={w("page.wind-fields.topography")}
            help="wind-topography"
            held={wind.topography}
            within={TOPOGRAPHIES}
            onChange={(typed) => doIt(setWindFigure(source, "topography", typed))}
          />
          <SourcedField
            label={w("page.wind-fields.relief")}
            help="wind-relief"
            held={wind.reliefPercent}
            within={RELIEFS}
            onChange={(typed) => doIt(setWindFigure(source, "reliefPercent", typed))}
          />
          {wind.reliefPercent && (
            <p className="edit-words">
              <button type="button" onClick={() => doIt(removeRelief(source))}>
                {w("page.wind-fields.no-relief")}
              </button>
            </p>
          )}
        </>
      )}
    </form>
  );
}

function speedOf(code: (typeof STRUCTURE_CODES)[number]): "usa" | "europe" {
  return code.startsWith("usa") ? "usa" : "europe";
}
