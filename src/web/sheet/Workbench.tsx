import {
  type DragEvent,
  Suspense,
  useCallback,
  useDeferredValue,
  useEffect,
  useMemo,
  useRef,
  useState,
} from "react";
import type { Finding } from "../../findings/finding.ts";
import type { Point } from "../../geometry/point.ts";
import type { SheetKind } from "../../project/schema/sheets.ts";
import type { PlaneKind } from "../../site/survey/packing.ts";
import type { Reader } from "../../text/say.ts";
import { useCutting } from "../cutting/use-cutting.ts";
import { DetailBand } from "../drawing/DetailBand.tsx";
import { DrawingArea } from "../drawing/DrawingArea.tsx";
import type { FieldFinder } from "../drawing/fields.ts";
import { present } from "../edit/history.ts";
import { ReadOnlyContext } from "../edit/read-only.ts";
import { NotesColumn } from "../notes/NotesColumn.tsx";
import {
  type Jump,
  leadOpening,
  outlineOf,
  type Pick,
  pickKey,
  pickOfMark,
  placeOfFinding,
} from "../picks/pick.ts";
import { useSiteNews } from "../progress/use-site-news.ts";
import { WalkOffer } from "../walk/WalkOffer.tsx";
import { ReaderContext, wordsFor } from "../words.ts";
import type { Cutter } from "../work/cutter.ts";
import type { PlaneSearcher } from "../work/planes.ts";
import { BindingMargin } from "./BindingMargin.tsx";
import {
  BuildUpBand,
  CuttingBand,
  loadSiteBands,
  OfferedDialog,
  OlderBanner,
  OrderBand,
  ProofBand,
  SectionDrawing,
  SheetsBand,
  SiteBand,
  SurveyBand,
  UpkeepBand,
  Walk,
} from "./bands.ts";
import { Guard } from "./Guard.tsx";
import type { Part } from "./parts.ts";
import { keepPreferences, type Preferences, readPreferences } from "./preferences.ts";
import { TitleBlock } from "./TitleBlock.tsx";
import { useOffered } from "./use-offered.ts";
import { type ProjectSources, type ProjectState, useProject } from "./use-project.ts";
import { useRested } from "./use-rested.ts";

/** Inputs that hold no text of their own. */
const WITHOUT_TEXT: readonly string[] = ["radio", "checkbox", "range"];

/** The keys that all programs share; in a field they belong to its text. */
function historyKey({ key, ctrlKey, metaKey, shiftKey, target }: KeyboardEvent): "undo" | "redo" | undefined {
  const typing =
    target instanceof HTMLTextAreaElement ||
    (target instanceof HTMLInputElement && !WITHOUT_TEXT.includes(target.type));
  if (!(ctrlKey || metaKey) || typing) return undefined;
  const letter = key.toLowerCase();
  if (letter === "z") return shiftKey ? "redo" : "undo";
  return letter === "y" ? "redo" : undefined;
}

/** The elevation follows a drag in every frame, the panes round it not sooner than so many milliseconds apart. */
const PANES_APART = 200;

const NO_FINDINGS: readonly Finding[] = [];

export interface WorkbenchProps extends ProjectSources {
  readonly cutter: Cutter;
  readonly searcher: PlaneSearcher;
}

/** What the proof shows of the sheets. */
const LIGHT_SHEETS: readonly SheetKind[] = ["light"];

export function Workbench(sources: WorkbenchProps) {
  const { project, offered } = useOffered(useProject(sources));
  const { sheeted } = project;
  const [preferences, setPreferences] = useState<Preferences>(readPreferences);
  const [part, setPart] = useState<Part>("setting-out");
  const [pick, setPick] = useState<Pick>();
  const [jump, setJump] = useState<Jump>();
  const [marked, setMarked] = useState<readonly string[]>([]);
  const [over, setOver] = useState<string>();
  const [fieldOf, setFieldOf] = useState<FieldFinder>();
  const [timesSmaller, setTimesSmaller] = useState<number>();
  const [walk, setWalk] = useState<"offered" | "going" | "none">(preferences.offered ? "none" : "offered");

  const holdFields = useCallback((finder: FieldFinder) => setFieldOf(() => finder), []);
  const display = sheeted?.design.project.display;
  const language = preferences.language ?? display?.language ?? "en";
  const units = preferences.units ?? display?.units ?? "mm";
  const denominator = display?.denominator ?? 16;
  // One reader while nothing of it changes: each answer of the worker brings its own copy of the project.
  const reader = useMemo<Reader>(() => ({ language, units, denominator }), [language, units, denominator]);
  const { w } = wordsFor(reader);
  const design = sheeted?.design;
  const older = sheeted?.older;
  // The elevation comes first and follows the hand; the panes round it are drawn when it leaves them time.
  const { sheeted: _, ...bare } = project;
  const deferred = useDeferredValue<ProjectState>(useRested(project, PANES_APART), bare);
  const settled = deferred.sheeted;
  const document = sheeted && present(sheeted.history).document;
  // What the last design had and this one has not is no longer picked.
  const held = design && pick && outlineOf(design, pick) ? pick : undefined;

  useEffect(() => {
    window.document.documentElement.lang = reader.language;
  }, [reader.language]);
  useEffect(() => {
    window.document.documentElement.dataset.light = preferences.light;
  }, [preferences.light]);
  // Pictures that were added while there was no server are sent when there is one.
  const shown = design !== undefined;
  useEffect(() => {
    if (!shown) return;
    const send = (): void => void import("../work/pictures.ts").then(({ sendPictures }) => sendPictures());
    const idle = requestIdleCallback(send);
    window.addEventListener("online", send);
    return () => {
      cancelIdleCallback(idle);
      window.removeEventListener("online", send);
    };
  }, [shown]);
  const { undo, redo } = project;
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      const way = historyKey(event);
      if (!way) return;
      event.preventDefault();
      (way === "undo" ? undo : redo)();
    };
    window.addEventListener("keydown", press);
    return () => window.removeEventListener("keydown", press);
  }, [undo, redo]);
  useEffect(() => {
    window.document.title = design ? `${design.project.title} · Outerleaf` : "Outerleaf";
  }, [design]);

  const choose = useCallback((change: Partial<Preferences>): void => {
    setPreferences((before) => {
      const next = { ...before, ...change };
      keepPreferences(next);
      return next;
    });
  }, []);
  const offering = walk === "offered" && settled !== undefined;
  useEffect(() => {
    if (offering) choose({ offered: true });
  }, [offering, choose]);
  const walkRound = useCallback(() => setWalk("going"), []);
  const leaveWalk = useCallback(() => {
    setWalk("none");
    window.document.querySelector<HTMLElement>(".walk-press")?.focus({ preventScroll: true });
  }, []);
  const latest = useRef(design);
  latest.current = design;
  const pickOnly = useCallback((next: Pick | undefined): void => {
    setPick(next);
    setMarked([]);
  }, []);
  const goTo = useCallback(
    (next: Pick, at?: Point): void => {
      pickOnly(next);
      setJump({ pick: next, ...(at && { at }) });
    },
    [pickOnly],
  );
  const show = useCallback((finding: Finding): void => {
    const place = latest.current && placeOfFinding(latest.current, finding);
    setMarked(finding.where.marks ?? []);
    if (!place) return;
    setPick(place);
    const { at } = finding.where;
    setJump({ pick: place, ...(at && { at }) });
  }, []);
  const goToMark = useCallback(
    (mark: string): void => {
      const place = latest.current && pickOfMark(latest.current, mark);
      if (place) goTo(place);
    },
    [goTo],
  );
  // What the pointer is over on a cut plan is seen on the facade as long as the plan is.
  const lit = useMemo(
    () => (over === undefined || part !== "cutting" ? marked : [...marked, over]),
    [marked, over, part],
  );
  const drawn = part === "sheets" || part === "proof";
  const cutting = useCutting(sources.cutter, {
    name: settled?.name,
    document: settled && present(settled.history).document,
    wanted: part === "cutting" || part === "order" || part === "site" || drawn,
    drawFor: drawn ? reader : undefined,
    drawOnly: part === "proof" ? LIGHT_SHEETS : undefined,
    onTheWay: part === "cutting" || part === "order",
  });
  const currency = settled?.design.project.stock.currency ?? "";
  const { edit } = project;
  const [siteShown, setSiteShown] = useState(false);
  const [plane, setPlane] = useState<PlaneKind>();
  const news = useSiteNews(
    sheeted?.keptAs,
    part === "site" || part === "survey" || part === "upkeep" || siteShown,
    loadSiteBands,
  );
  const own = useMemo(() => {
    if (part === "survey" && settled)
      return (
        <SurveyBand
          design={settled.design}
          name={settled.name}
          proving={settled.proving}
          document={present(settled.history).document}
          pick={pick}
          told={news?.state}
          plane={plane}
          onPlane={setPlane}
          onMark={goToMark}
          onFinding={show}
          onEdit={edit}
        />
      );
    if (part === "build-up" && settled) {
      const at = pick ?? leadOpening(settled.design);
      return (
        <>
          {at && <SectionDrawing design={settled.design} pick={at} picked={pick} />}
          <BuildUpBand searcher={sources.searcher} design={settled.design} pick={pick} onEdit={edit} />
        </>
      );
    }
    if (part === "cutting" && settled)
      return (
        <CuttingBand
          cutting={cutting}
          design={settled.design}
          document={present(settled.history).document}
          pick={pick}
          onMark={goToMark}
          onOver={setOver}
          onFinding={show}
          onEdit={edit}
        />
      );
    if (part === "proof" && settled)
      return (
        <ProofBand
          design={settled.design}
          document={present(settled.history).document}
          findings={settled.findings}
          cutting={cutting}
          pick={pick}
          onFinding={show}
          onPick={goTo}
          onEdit={edit}
        />
      );
    if (part === "site" && settled)
      return (
        <SiteBand
          design={settled.design}
          document={present(settled.history).document}
          news={news}
          plan={cutting.cut?.plan}
          onMark={goToMark}
          onFinding={show}
          onEdit={edit}
        />
      );
    if (part === "upkeep" && settled)
      return (
        <UpkeepBand
          {...{ news, pick }}
          design={settled.design}
          name={settled.name}
          onPick={goTo}
          onEdit={edit}
        />
      );
    if (part === "order") return <OrderBand {...{ cutting, currency }} />;
    return part === "sheets" && settled ? (
      <SheetsBand
        cutting={cutting}
        design={settled.design}
        name={settled.name}
        document={present(settled.history).document}
        project={settled.keptAs}
        isOlder={settled.older !== undefined}
        onEdit={edit}
      />
    ) : undefined;
  }, [part, settled, news, plane, sources.searcher, cutting, currency, pick, goTo, goToMark, show, edit]);
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    const file = event.dataTransfer.files[0];
    if (file) project.open(file);
  };

  return (
    <ReaderContext value={reader}>
      <ReadOnlyContext value={older !== undefined}>
        <Suspense>
          {older && <OlderBanner older={older} onBack={project.comeBack} onRestore={project.restore} />}
        </Suspense>
        <main className="sheet" onDragOver={(event) => event.preventDefault()} onDrop={drop}>
          <h1 className="unseen">{design ? design.project.title : "Outerleaf"}</h1>
          <BindingMargin part={part} onPart={setPart} />
          <Guard says={w("page.guarded")} trial={design}>
            <DrawingArea
              design={design}
              document={document}
              load={sheeted?.load ?? 0}
              findings={sheeted?.findings ?? NO_FINDINGS}
              pick={held}
              told={news?.state}
              plane={plane}
              onSite={setSiteShown}
              marked={lit}
              jump={jump}
              empty={project.busy ? w("page.busy") : w("page.no-drawing")}
              onPick={pickOnly}
              onGo={goTo}
              onEdit={project.edit}
              onPractise={project.practise}
              onFields={holdFields}
              onScale={setTimesSmaller}
            />
          </Guard>
          <Guard says={w("page.guarded")} trial={`${part} ${pick ? pickKey(pick) : ""}`}>
            <DetailBand
              own={own}
              design={settled?.design}
              findings={settled?.findings ?? NO_FINDINGS}
              pick={settled && held && outlineOf(settled.design, held) ? held : undefined}
              document={settled && present(settled.history).document}
              onFinding={show}
              onPick={goTo}
              onEdit={project.edit}
            />
          </Guard>
          <div className="column">
            {offering && <WalkOffer onWalk={walkRound} onDecline={leaveWalk} />}
            <NotesColumn project={deferred} pick={held} fieldOf={fieldOf} onFinding={show} onPick={goTo} />
            <TitleBlock
              project={deferred}
              preferences={preferences}
              timesSmaller={timesSmaller}
              onChoose={choose}
              onWalk={walkRound}
            />
          </div>
          <Suspense>{offered && <OfferedDialog offered={offered} />}</Suspense>
          <Suspense>
            {walk === "going" && sheeted && (
              <Walk
                design={sheeted.design}
                part={part}
                pick={held}
                edits={sheeted.history.at}
                onPart={setPart}
                onLeave={leaveWalk}
              />
            )}
          </Suspense>
        </main>
      </ReadOnlyContext>
    </ReaderContext>
  );
}
