/**
 * The message catalogues, one file a subject, English and French side by side so that neither can be forgotten.
 * A new file is added to the list below.
 */

import book from "../../data/text/book.json" with { type: "json" };
import built from "../../data/text/built.json" with { type: "json" };
import catalogue from "../../data/text/catalogue.json" with { type: "json" };
import cli from "../../data/text/cli.json" with { type: "json" };
import drawing from "../../data/text/drawing.json" with { type: "json" };
import light from "../../data/text/light.json" with { type: "json" };
import moisture from "../../data/text/moisture.json" with { type: "json" };
import page from "../../data/text/page.json" with { type: "json" };
import pageEdit from "../../data/text/page-edit.json" with { type: "json" };
import planes from "../../data/text/planes.json" with { type: "json" };
import project from "../../data/text/project.json" with { type: "json" };
import proof from "../../data/text/proof.json" with { type: "json" };
import proofAir from "../../data/text/proof-air.json" with { type: "json" };
import schedule from "../../data/text/schedule.json" with { type: "json" };
import setout from "../../data/text/setout.json" with { type: "json" };
import store from "../../data/text/store.json" with { type: "json" };
import structure from "../../data/text/structure.json" with { type: "json" };
import survey from "../../data/text/survey.json" with { type: "json" };
import terms from "../../data/text/terms.json" with { type: "json" };
import upkeep from "../../data/text/upkeep.json" with { type: "json" };

export type Language = "en" | "fr";
export const LANGUAGES: readonly Language[] = ["en", "fr"];

type Entry = Readonly<Record<Language, string>>;

const FILES: readonly Readonly<Record<string, Entry>>[] = [
  terms,
  catalogue,
  project,
  setout,
  planes,
  proof,
  light,
  proofAir,
  structure,
  schedule,
  book,
  drawing,
  page,
  pageEdit,
  store,
  survey,
  built,
  moisture,
  upkeep,
  cli,
];

const ENTRIES = new Map<string, Entry>(FILES.flatMap((file) => Object.entries(file)));

/** Adds what only a part of the page says, and brings with it: its first script does without. */
export function addCatalogue(file: Readonly<Record<string, Entry>>): void {
  for (const [key, entry] of Object.entries(file)) ENTRIES.set(key, entry);
}

/** The template of a message, or undefined for a key that no catalogue has. */
export function template(key: string, language: Language): string | undefined {
  return ENTRIES.get(key)?.[language];
}

/** Every key, in the order of the files. */
export function messageKeys(): string[] {
  return [...ENTRIES.keys()];
}

/** Keys that stand in more than one file. */
export function doubledKeys(): string[] {
  const keys = FILES.flatMap((file) => Object.keys(file));
  return keys.filter((key, i) => keys.indexOf(key) !== i);
}
