/** The calculation book on paper of its own: A4, or what North America has for it. */
import { waiverOf } from "../../../project/waivers.ts";
import type { Block, BookType } from "../../../scene/book/blocks.ts";
import { bookPages } from "../../../scene/book/book-pages.ts";
import { likeBlocks } from "../../../scene/book/like-blocks.ts";
import { makeBook } from "../../../scene/book/make-book.ts";
import type { BookEntry } from "../../../scene/book/model.ts";
import type { Scene } from "../../../scene/model.ts";
import { message } from "../../../text/message.ts";
import type { Drawing, KindFacts } from "../facts.ts";
import { oneByOne } from "../grouped.ts";
import { tableRoom } from "../paper.ts";

export function bookSheets(facts: KindFacts): Iterable<Drawing> {
  const { design, findings, language, reader: tape, memo } = facts;
  const reader = { language, units: tape.units, denominator: tape.denominator };
  const { project } = design;
  const paper = reader.units === "feet-inch" ? "letter" : "A4";
  const room = tableRoom({ units: reader.units, paper });
  const book = makeBook({ project, findings, waiverOf: (one) => waiverOf(one, project.waivers) });
  if (book.chapters.length === 0) return [];
  const pages = bookPages(book, {
    room,
    nameOf: (at) => (at === 0 ? "book" : `book-${at + 1}`),
    reader,
    blocksOf: (group) => memo.recall(laidOut, { group, type: { reader, width: room.width } }),
  });
  const type = message("drawing.document-type.book");
  return oneByOne(pages, ({ scene, holds }) => [
    { name: scene.id, type, scenes: memo.recall(sceneOf, { scene }), paper, holds },
  ]);
}

interface From {
  readonly group: readonly BookEntry[];
  readonly type: BookType;
}

function laidOut({ group, type }: From): Block[] {
  return likeBlocks(group, type);
}

/** The same page as before, where nothing on it differs. */
function sceneOf({ scene }: { readonly scene: Scene }): Scene[] {
  return [scene];
}
