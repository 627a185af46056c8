/** P044: figures of the project file that stand in place of the catalogue's, and those that cannot. */
import type { FigureDemand } from "../codes/demands.ts";
import { type Finding, finding, type PatchOperation } from "../findings/finding.ts";
import { pointerOf } from "../project/pointer.ts";
import { type Message, type MessageValue, message } from "../text/message.ts";
import type { ProofContext } from "./context.ts";

export function ownFigures({ project, demands }: ProofContext): Finding[] {
  return demands.figures.map((figure) => {
    const { key, fault, far, source, catalogue } = figure;
    const path = pointerOf(["figures", key]);
    const values = {
      key,
      value: worded(figure.value),
      unit: figure.unit === "" ? "" : ` ${figure.unit}`,
      catalogue: catalogue === undefined ? "" : worded(catalogue),
    };
    if (!fault) {
      return finding({
        code: "P044",
        outcome: far ? "attention" : "pass",
        where: { path },
        says: message("proof.figure.stands", values),
        ...(far ? { hint: message("proof.figure.far") } : {}),
        source,
      });
    }
    const near = "near" in fault ? fault.near : undefined;
    return finding({
      code: "P044",
      outcome: "fail",
      where: { path },
      says: message(`proof.figure.${fault.kind}`, values),
      hint: hint(fault, near),
      ...(near === undefined || project.figures?.[near]
        ? {}
        : { edit: renamed(path, near, project.figures?.[key]) }),
    });
  });
}

function hint(fault: NonNullable<FigureDemand["fault"]>, near: string | undefined): Message {
  if (near !== undefined) {
    return message(fault.kind === "unknown" ? "proof.figure.meant" : "proof.figure.read-instead", { near });
  }
  if (fault.kind === "unit") {
    return fault.unit === "1"
      ? message("proof.figure.no-unit")
      : message("proof.figure.give-unit", { unit: fault.unit });
  }
  return fault.kind === "word"
    ? message("proof.figure.one-of", { words: fault.words })
    : message("proof.figure.see-list");
}

function renamed(path: string, near: string, value: unknown): PatchOperation[] {
  return [
    { op: "remove", path },
    { op: "add", path: pointerOf(["figures", near]), value },
  ];
}

function worded(value: FigureDemand["value"]): MessageValue {
  if (typeof value !== "object") return value;
  const { min, max } = value;
  if (min === undefined) return message("proof.figure.up-to", { max: max ?? "" });
  return max === undefined
    ? message("proof.figure.from", { min })
    : message("proof.figure.span-of", { min, max });
}
