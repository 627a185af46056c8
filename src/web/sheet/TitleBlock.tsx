import { memo, type ReactNode, useRef } from "react";
import type { Design } from "../../design.ts";
import { message } from "../../text/message.ts";
import { KeptField } from "../kept/KeptField.tsx";
import { useWords, type Words } from "../words.ts";
import { handOut } from "./hand-out.ts";
import type { Preferences } from "./preferences.ts";
import type { ProjectState } from "./use-project.ts";

export interface TitleBlockProps {
  readonly project: ProjectState;
  readonly preferences: Preferences;
  /** How many times smaller than the wall the drawing is shown. */
  readonly timesSmaller: number | undefined;
  onChoose(change: Partial<Preferences>): void;
  onWalk(): void;
}

/** The title block (fields of ISO 7200); pressing a field changes it. */
export const TitleBlock = memo(function TitleBlock({
  project,
  preferences,
  timesSmaller,
  onChoose,
  onWalk,
}: TitleBlockProps) {
  const words = useWords();
  const { w, reader } = words;
  const { sheeted } = project;
  const input = useRef<HTMLInputElement>(null);
  return (
    <footer className="title-block">
      <Field name="project" label={w("page.block.project")}>
        <b className="project-title">{sheeted?.design.project.title ?? "Outerleaf"}</b>
      </Field>
      <Field name="sheet" label={w("page.block.sheet")}>
        {w("page.block.sheet-is")}
      </Field>
      <Field name="revision" label={w("page.block.revision")}>
        {sheeted?.design.project.revision ?? w("page.block.no-revision")}
      </Field>
      <Field name="scale" label={w("page.block.scale")}>
        {timesSmaller === undefined ? "" : w("page.block.scale-is", { times: scaleFigure(timesSmaller) })}
      </Field>
      <Choice
        name="units"
        label={w("page.block.units")}
        held={reader.units}
        choices={[
          { value: "mm", text: "mm" },
          { value: "feet-inch", text: w("page.block.feet-inch") },
        ]}
        onChoose={(units) => onChoose({ units })}
      />
      <Choice
        name="language"
        label={w("page.block.language")}
        held={reader.language}
        choices={[
          { value: "en", text: "English", lang: "en" },
          { value: "fr", text: "Français", lang: "fr" },
        ]}
        onChoose={(language) => onChoose({ language })}
      />
      <Choice
        name="light"
        label={w("page.block.light")}
        held={preferences.light}
        choices={[
          { value: "auto", text: w("page.block.auto") },
          { value: "day", text: w("page.block.day") },
          { value: "night", text: w("page.block.night") },
        ]}
        onChoose={(light) => onChoose({ light })}
      />
      <Field name="totals" label={w("page.block.totals")}>
        {sheeted ? totals(sheeted.design, words) : ""}
      </Field>
      <Field name="history" label={w("page.block.edits")}>
        <span className="edit-name">{project.back ? words.s(project.back) : w("page.block.no-edits")}</span>
        <button type="button" disabled={!project.back} onClick={project.undo}>
          {w("page.edit.undo")}
        </button>
        <button
          type="button"
          disabled={!project.forth}
          title={project.forth ? words.s(project.forth) : undefined}
          onClick={project.redo}
        >
          {w("page.edit.redo")}
        </button>
      </Field>
      <KeptField project={project} />
      <Field name="file" label={w("page.block.file")}>
        <span className="file-name">
          {sheeted?.name ?? w("page.block.no-file")}
          {project.unsaved && <span className="unsaved"> · {w("page.block.unsaved")}</span>}
        </span>
        <button type="button" disabled={!sheeted} onClick={() => saveAs(project)}>
          {w("page.edit.save")}
        </button>
        <button type="button" onClick={() => input.current?.click()}>
          {w("page.block.open")}
        </button>
        <input
          ref={input}
          className="unseen"
          type="file"
          accept=".json,application/json"
          tabIndex={-1}
          aria-label={w("page.block.open")}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file) project.open(file);
            // The same file may be opened again after it was mended.
            event.currentTarget.value = "";
          }}
        />
      </Field>
      <p className="block-caution">
        <span>{w("page.block.caution")}</span>
        <button type="button" className="walk-press" disabled={!sheeted} onClick={onWalk}>
          {w("page.walk")}
        </button>
      </p>
    </footer>
  );
});

function Field({ name, label, children }: { name: string; label: string; children: ReactNode }) {
  return (
    <div className={`field field-${name}`}>
      <span className="label">{label}</span>
      <span className="value">{children}</span>
    </div>
  );
}

function Choice<Value extends string>({
  name,
  label,
  held,
  choices,
  onChoose,
}: {
  name: string;
  label: string;
  held: Value;
  choices: readonly { readonly value: Value; readonly text: string; readonly lang?: string }[];
  onChoose: (value: Value) => void;
}) {
  return (
    <fieldset className={`field field-${name}`}>
      <legend className="label">{label}</legend>
      <span className="value choices">
        {choices.map(({ value, text, lang }) => (
          <button
            type="button"
            key={value}
            lang={lang}
            aria-pressed={value === held}
            onClick={() => onChoose(value)}
          >
            {text}
          </button>
        ))}
      </span>
    </fieldset>
  );
}

function saveAs(project: ProjectState): void {
  const text = project.save();
  if (text === undefined || !project.sheeted) return;
  handOut({ name: project.sheeted.name, content: text }, "application/json");
}

/** Two figures that count: a view dragged about needs no more. */
function scaleFigure(times: number): number {
  return Number(times.toPrecision(2));
}

const FOOT = 304.8;

function totals(design: Design, { w, reader }: Words): string {
  const pieces = design.facade.faces.flatMap((face) => face.pieces);
  const boards = pieces.filter(({ kind }) => kind === "board");
  const run = boards.reduce((sum, { cut }) => sum + cut.length, 0);
  return w("page.block.totals-are", {
    sheets: pieces.filter(({ kind }) => kind === "sheet").length,
    boards: boards.length,
    run:
      reader.units === "mm"
        ? message("page.metres", { value: run / 1000 })
        : message("page.feet", { value: run / FOOT }),
    screws: pieces.reduce((sum, { fixings }) => sum + fixings.length, 0),
  });
}
