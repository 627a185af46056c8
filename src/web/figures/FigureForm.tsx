import { useId, useRef, useState } from "react";
import { catalogueFigure, figureFault, figureWords, type OwnFigure } from "../../catalogue/own-figures.ts";
import { documentOf } from "../../codes/rule-value.ts";
import type { Source } from "../../project/editing/change.ts";
import { removeFigure, setFigure } from "../../project/editing/figures.ts";
import { message } from "../../text/message.ts";
import { type Reader, sayNumber } from "../../text/say.ts";
import { sourceText } from "../notes/source.ts";
import type { Edit } from "../sheet/use-project.ts";
import { useWords, type Words } from "../words.ts";
import { type FieldName, fieldsOf, shownOf, type Typed, typedValue } from "./typed.ts";

/** One figure of the reference data: what it is, where it stands, and the reader's own in its place. */
export function FigureForm({
  name,
  source,
  onEdit,
}: {
  name: string;
  source: Source;
  onEdit: (edit: Edit) => void;
}) {
  const words = useWords();
  const { w, s, reader } = words;
  const id = useId();
  const first = useRef<HTMLElement>(null);
  const [typed, setTyped] = useState<Typed>({});
  const [from, setFrom] = useState<string>();
  const [tried, setTried] = useState(false);
  const record = catalogueFigure(name);
  if (!record) return null;
  const own = source.project.figures?.[name];
  const unit = "key" in record || record.unit === "1" ? undefined : record.unit;
  const fields = { ...shownOf(own?.value, record, reader), ...typed };
  const written = from ?? own?.source ?? "";
  const value = typedValue(fields, record);
  const fault = value === undefined ? undefined : faultOf(name, { value, unit, source: written });
  const valueWrong =
    value === undefined
      ? w("page.figures.no-number")
      : fault &&
        s(
          message(`proof.figure.${fault}`, {
            key: name,
            value: worded(value, words),
            unit: unit ? ` ${unit}` : "",
          }),
        );
  const sourceWrong = written.trim() === "" ? w("page.figures.no-source") : undefined;
  const put = (): void => {
    setTried(true);
    if (value === undefined || valueWrong || sourceWrong) return;
    onEdit(setFigure(source, name, { value, unit, source: written.trim() }));
    setTyped({});
    setFrom(undefined);
    setTried(false);
  };
  const takeOut = (): void => {
    const change = removeFigure(source, name);
    if (!change) return;
    onEdit(change);
    setTyped({});
    setFrom(undefined);
    setTried(false);
    // The button goes with the figure: what is typed next is what was taken out.
    first.current?.focus();
  };
  return (
    <form
      className="figure-form"
      aria-label={name}
      onSubmit={(event) => {
        event.preventDefault();
        put();
      }}
    >
      <p className="figure-name">{name.replaceAll(".", ".\u200b")}</p>
      <p className={own ? "figure-data replaced" : "figure-data"}>
        {w("page.figures.data", {
          value: withUnit(worded("key" in record ? record.key : record.value, words), unit),
        })}
        {" · "}
        {w(`page.figures.basis.${record.basis}`)}
        {" · "}
        {sourceText(documentOf(record.source), words)}
      </p>
      {own && (
        <p className="figure-own">
          {w("page.figures.own", {
            value: withUnit(worded(own.value, words), unit),
            source: own.source ?? "",
          })}
        </p>
      )}
      <div className="figure-fields">
        {fieldsOf(record).map((field, i) => (
          <p className="length-field" key={field}>
            <label htmlFor={`${id}-${field}`}>{labelOf(field, unit, words)}</label>
            {field === "word" ? (
              <select
                id={`${id}-${field}`}
                ref={(element) => {
                  first.current = element;
                }}
                value={fields.word}
                onChange={({ currentTarget }) => setTyped({ word: currentTarget.value })}
              >
                {figureWords(name).map((word) => (
                  <option key={word}>{word}</option>
                ))}
              </select>
            ) : (
              <input
                id={`${id}-${field}`}
                ref={(element) => {
                  if (i === 0) first.current = element;
                }}
                inputMode="decimal"
                autoComplete="off"
                value={fields[field] ?? ""}
                aria-invalid={tried && valueWrong !== undefined}
                aria-describedby={tried && valueWrong ? `${id}-wrong` : undefined}
                onChange={({ currentTarget }) => setTyped({ ...typed, [field]: currentTarget.value })}
              />
            )}
          </p>
        ))}
        <p className="length-field figure-from">
          <label htmlFor={`${id}-from`}>{w("page.figures.where")}</label>
          <input
            id={`${id}-from`}
            autoComplete="off"
            value={written}
            aria-invalid={tried && sourceWrong !== undefined}
            aria-describedby={tried && sourceWrong ? `${id}-no-source` : undefined}
            onChange={({ currentTarget }) => setFrom(currentTarget.value)}
          />
        </p>
        <p className="figure-words">
          <button type="submit">{w("page.figures.put")}</button>
          {own && (
            <button type="button" onClick={takeOut}>
              {w("page.figures.take-out")}
            </button>
          )}
        </p>
      </div>
      <div aria-live="polite">
        {tried && valueWrong && (
          <p className="figure-wrong" id={`${id}-wrong`}>
            {valueWrong}
          </p>
        )}
        {tried && sourceWrong && (
          <p className="figure-wrong" id={`${id}-no-source`}>
            {sourceWrong}
          </p>
        )}
      </div>
    </form>
  );
}

function faultOf(name: string, figure: OwnFigure): string | undefined {
  return figureFault(name, figure)?.kind;
}

function labelOf(field: FieldName, unit: string | undefined, { w }: Words): string {
  const own = unit === undefined ? w("page.figures.value") : w("page.figures.value-in", { unit });
  if (field === "min") return `${own}, ${w("page.figures.least")}`;
  return field === "max" ? `${own}, ${w("page.figures.most")}` : own;
}

function withUnit(value: string, unit: string | undefined): string {
  return unit === undefined ? value : `${value} ${unit}`;
}

function worded(value: OwnFigure["value"], { s, reader }: Words): string {
  if (typeof value === "string") return value;
  if (typeof value === "number") return number(value, reader);
  const min = value.min === undefined ? "" : number(value.min, reader);
  const max = value.max === undefined ? "" : number(value.max, reader);
  if (min === "") return s(message("proof.figure.up-to", { max }));
  return s(
    max === "" ? message("proof.figure.from", { min }) : message("proof.figure.span-of", { min, max }),
  );
}

function number(value: number, reader: Reader): string {
  return sayNumber(value, undefined, reader);
}
