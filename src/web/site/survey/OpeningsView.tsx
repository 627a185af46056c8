import { type FormEvent, useState } from "react";
import { heading } from "../../../scene/views/extent.ts";
import { useWords } from "../../words.ts";
import { LengthInput } from "../LengthInput.tsx";
import type { Site } from "../use-site.ts";

const MEASURES = ["left", "width", "sill", "height"] as const;
type Measures = Partial<Record<(typeof MEASURES)[number] | "rising" | "falling", number | undefined>>;

/** What is measured of a face's openings and ends; what is told anew takes the place of what was told before. */
export function OpeningsView({ site, face }: { site: Site; face: string }) {
  const { w } = useWords();
  const openings = site.held?.design.project.faces.find(({ id }) => id === face)?.openings ?? [];
  return (
    <>
      <h2>{w("page.site.openings", { face: heading(face) })}</h2>
      <p className="sub">{w("page.site.openings-how")}</p>
      {openings.map(({ id }) => (
        <OpeningForm key={id} site={site} face={face} opening={id} />
      ))}
      {(["left", "right"] as const).map((end) => (
        <EndForm key={end} site={site} face={face} end={end} />
      ))}
      <p className="sub">{w("drawing.method.caution")}</p>
    </>
  );
}

function OpeningForm({ site, face, opening }: { site: Site; face: string; opening: string }) {
  const { w } = useWords();
  const before = site.state.openings.filter(({ place }) => place.face === face && place.opening === opening);
  const [measures, setMeasures] = useState<Measures>(() => {
    const { diagonals, ...body } = before.at(-1)?.body ?? {};
    return { ...body, ...(diagonals && { rising: diagonals[0], falling: diagonals[1] }) };
  });
  const [told, setTold] = useState<"told" | "not-kept">();
  const { rising, falling } = measures;
  const sizes = Object.fromEntries(
    MEASURES.flatMap((key) => (measures[key] === undefined ? [] : [[key, measures[key]]])),
  );
  const oneDiagonal = (rising === undefined) !== (falling === undefined);
  const isEmpty = Object.values(measures).every((value) => value === undefined);
  const keep = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (isEmpty || oneDiagonal) return;
    const diagonals: [number, number] | undefined =
      rising === undefined || falling === undefined ? undefined : [rising, falling];
    const isKept = await site.tell({
      kind: "opening",
      place: { face, opening },
      body: { ...sizes, ...(diagonals && { diagonals }) },
      ...(before.length > 0 && { corrects: before.map(({ id }) => id) }),
    });
    setTold(isKept ? "told" : "not-kept");
  };
  return (
    <form onSubmit={(event) => void keep(event)}>
      <fieldset>
        <legend>{opening}</legend>
        {[...MEASURES, "rising" as const, "falling" as const].map((key) => (
          <LengthInput
            key={key}
            label={w(`page.site.measure-${key}`)}
            value={measures[key]}
            onChange={(mm) => {
              setMeasures({ ...measures, [key]: mm });
              setTold(undefined);
            }}
          />
        ))}
        {oneDiagonal && <p>{w("page.site.both-diagonals")}</p>}
        <button type="submit" className="main" disabled={isEmpty || oneDiagonal}>
          {w("page.site.keep-opening", { opening })}
        </button>
        {told && <p role={told === "told" ? "status" : "alert"}>{w(`page.site.${told}`)}</p>}
      </fieldset>
    </form>
  );
}

function EndForm({ site, face, end }: { site: Site; face: string; end: "left" | "right" }) {
  const { w } = useWords();
  const before = site.state.ends.filter(({ place, body }) => place.face === face && body.end === end);
  const [at, setAt] = useState(before.at(-1)?.body.at);
  const [told, setTold] = useState<"told" | "not-kept">();
  const keep = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    if (at === undefined) return;
    const isKept = await site.tell({
      kind: "end",
      place: { face },
      body: { end, at },
      ...(before.length > 0 && { corrects: before.map(({ id }) => id) }),
    });
    setTold(isKept ? "told" : "not-kept");
  };
  return (
    <form onSubmit={(event) => void keep(event)}>
      <LengthInput label={w(`page.site.end-${end}`)} value={at} onChange={setAt} />
      <button type="submit" className="main" disabled={at === undefined}>
        {w(`page.site.keep-end-${end}`)}
      </button>
      {told && <p role={told === "told" ? "status" : "alert"}>{w(`page.site.${told}`)}</p>}
    </form>
  );
}
