import { memo, useEffect, useMemo, useState } from "react";
import type { Design } from "../../design.ts";
import type { ZoneRef } from "../../project/lookup.ts";
import { heading } from "../../scene/views/extent.ts";
import {
  type PassingCombination,
  type PlaneCombination,
  type PlaneSearchResult,
  planeGroups,
  type RuleSaid,
} from "../../setout/plane-search/index.ts";
import { message } from "../../text/message.ts";
import { sayLength } from "../../text/say.ts";
import { type Pick, zoneIdOf } from "../picks/pick.ts";
import { Scrolls } from "../sheet/Scrolls.tsx";
import type { Edit } from "../sheet/use-project.ts";
import { useWords, type Words } from "../words.ts";
import type { PlaneSearcher } from "../work/planes.ts";

export interface BuildUpBandProps {
  readonly searcher: PlaneSearcher;
  readonly design: Design;
  readonly pick: Pick | undefined;
  onEdit(edit: Edit): void;
}

/** Every combination of the stock whose faces meet: those that keep all rules, best first, and what the others break. */
export const BuildUpBand = memo(function BuildUpBand({ searcher, design, pick, onEdit }: BuildUpBandProps) {
  const words = useWords();
  const { w } = words;
  const groups = useMemo(() => groupsOf(design), [design]);
  const group = groups.find((zones) => pick && zones.some((zone) => isAt(zone, design, pick))) ?? groups[0];
  const search = useSearch(searcher, design, group);
  if (!group) return <p className="planes-band">{w("page.planes.none")}</p>;
  return (
    <div className="planes-band" aria-busy={search.stale}>
      <h2>{w("page.planes", { zones: group.map(({ face, zone }) => `${heading(face)} ${zone}`) })}</h2>
      <p className="sub" aria-live="polite">
        {search.result ? w("planes.counts", { ...search.result.counts }) : w("page.planes.busy")}
      </p>
      {search.result && (
        <Scrolls className="planes-found" label={w("page.part.build-up")}>
          <Passing result={search.result} words={words} onEdit={onEdit} />
          <Failing result={search.result} words={words} />
        </Scrolls>
      )}
    </div>
  );
});

/** Zones that meet others, and each remaining zone by itself. */
function groupsOf({ project }: Design): readonly (readonly ZoneRef[])[] {
  const meeting = planeGroups(project);
  const alone = project.faces.flatMap((face) =>
    face.zones
      .map(({ id }): ZoneRef => ({ face: face.id, zone: id }))
      .filter(
        (ref) =>
          !meeting.some((zones) => zones.some((one) => one.face === ref.face && one.zone === ref.zone)),
      )
      .map((ref) => [ref]),
  );
  return [...meeting, ...alone];
}

function isAt({ face, zone }: ZoneRef, design: Design, pick: Pick): boolean {
  const picked = zoneIdOf(design, pick);
  return face === pick.face && (picked === undefined || picked === zone);
}

/** Edits within this time are searched once, ms. */
const REST = 250;

function useSearch(
  searcher: PlaneSearcher,
  { project }: Design,
  zones: readonly ZoneRef[] | undefined,
): { readonly result: PlaneSearchResult | undefined; readonly stale: boolean } {
  const [held, setHeld] = useState<{ readonly of: string; readonly result: PlaneSearchResult | undefined }>();
  const key = JSON.stringify([zones, project]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key holds the project and its zones
  useEffect(() => {
    if (!zones) return;
    let left = false;
    const rested = setTimeout(() => {
      void searcher.search({ project, zones }).then((result) => {
        if (!left) setHeld({ of: key, result });
      });
    }, REST);
    return () => {
      left = true;
      clearTimeout(rested);
    };
  }, [searcher, key]);
  return { result: held?.result, stale: held?.of !== key };
}

function Passing({
  result: { passing, counts },
  words: { w, s, reader },
  onEdit,
}: {
  result: PlaneSearchResult;
  words: Words;
  onEdit: (edit: Edit) => void;
}) {
  const [first] = passing;
  if (!first) return <p>{w("page.planes.no-passing")}</p>;
  const length = (mm: number): string => sayLength(mm, reader);
  return (
    <div className="planes-passing">
      <table>
        <thead>
          <tr>
            {first.buildUps.map(({ buildUp }) => (
              <th scope="col" key={buildUp}>
                {buildUp}
              </th>
            ))}
            {first.claddings.map(({ cladding }) => (
              <th scope="col" key={cladding}>
                {cladding}
              </th>
            ))}
            <th scope="col">{w("page.planes.plane")}</th>
            <th scope="col">{w("page.planes.cavity")}</th>
            <th scope="col">{w("page.planes.step")}</th>
            <th scope="col">{w("page.planes.why")}</th>
            <th scope="col">
              <span className="unseen">{w("page.planes.take")}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {passing.map((one) => (
            <tr key={stackKey(one)} aria-current={one.present || undefined}>
              {one.buildUps.map(({ buildUp, battens, packers, battenScrew, railScrew }) => (
                <td key={buildUp}>
                  {[...packers.map(length), ...battens].join(" + ")}{" "}
                  <span className="sub">{[battenScrew, railScrew].filter(Boolean).join(", ")}</span>
                </td>
              ))}
              {one.claddings.map(({ cladding, thickness, screw }) => (
                <td key={cladding}>
                  {length(thickness)} <span className="sub">{screw}</span>
                </td>
              ))}
              <td className="figure">{length(one.merit.plane)}</td>
              <td className="figure">{length(Math.min(...one.zones.map(({ cavity }) => cavity)))}</td>
              <td className="figure">{length(one.merit.step)}</td>
              <td>{s(one.rank)}</td>
              <td>
                {one.present ? (
                  w("page.planes.present")
                ) : (
                  <button type="button" className="fold" onClick={() => onEdit(taking(one))}>
                    {w("page.planes.take")}
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {counts.passing > passing.length && (
        <p className="sub">{w("page.planes.more", { count: counts.passing - passing.length })}</p>
      )}
      {first.attention.length > 0 && (
        <>
          <h3>{w("page.planes.look")}</h3>
          <Rules rules={first.attention} s={s} />
        </>
      )}
    </div>
  );
}

function taking({ edit }: PassingCombination): Edit {
  return { operations: edit, says: message("page.edit.planes") };
}

function Failing({
  result: { failing, nearest, counts },
  words: { w, s, reader },
}: {
  result: PlaneSearchResult;
  words: Words;
}) {
  const shown = [...(nearest ? [nearest] : []), ...failing];
  if (shown.length === 0) return null;
  return (
    <details className="planes-failing">
      <summary>{w("page.planes.failing", { count: counts.failing })}</summary>
      <ul>
        {shown.map((one) => (
          <li key={stackKey(one)}>
            <p>
              {one.buildUps
                .map(({ battens, packers }) =>
                  [...packers.map((mm) => sayLength(mm, reader)), ...battens].join(" + "),
                )
                .join(" | ")}
            </p>
            <Rules rules={one.failed} s={s} />
          </li>
        ))}
      </ul>
    </details>
  );
}

function Rules({ rules, s }: { rules: readonly RuleSaid[]; s: Words["s"] }) {
  return (
    <ul className="planes-rules">
      {rules.map(({ rule, says, zones }) => {
        const at = [...new Set(zones.map(({ face, zone }) => `${heading(face)} ${zone}`))].join(", ");
        return (
          <li key={`${rule} ${at} ${s(says)}`}>
            <b>{s(message(`planes.rule.${rule}`))}</b> {at && <span className="sub">{at}</span>} {s(says)}
          </li>
        );
      })}
    </ul>
  );
}

function stackKey({ buildUps, claddings }: PlaneCombination): string {
  return JSON.stringify([buildUps, claddings]);
}
