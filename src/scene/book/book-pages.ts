/** The calculation book as pages: what is to be settled and the contents in front, then a chapter a subject. */
import { OUTCOMES } from "../../findings/finding.ts";
import { type Message, message } from "../../text/message.ts";
import type { Reader } from "../../text/say.ts";
import type { Scene, SceneText } from "../model.ts";
import { type Block, type BookType, block, onPages, pageItems } from "./blocks.ts";
import { outcomeOf } from "./entry-blocks.ts";
import { likeEntries } from "./like.ts";
import type { Book, BookChapter, BookEntry } from "./model.ts";

export interface BookPage {
  readonly scene: Scene;
  /** Codes of the rules and numbers of the entries that begin on it. */
  readonly holds: readonly string[];
}

export interface BookLayout {
  /** What the paper leaves, mm. */
  readonly room: { readonly width: number; readonly height: number };
  /** Of a page, by its place from 0, as links lead to it. */
  readonly nameOf: (at: number) => string;
  readonly reader: Reader;
  /** Lays out entries that hold alike. */
  readonly blocksOf: (group: readonly BookEntry[]) => readonly Block[];
}

type LeadsTo = (anchor: string) => string | undefined;

export function bookPages(book: Book, { room, nameOf, reader, blocksOf }: BookLayout): BookPage[] {
  const type: BookType = { reader, width: room.width };
  const chapters = book.chapters.flatMap((chapter, at) => {
    const blocks = chapter.rules.flatMap(({ code, name, entries }) => [
      heading(message("book.rule", { code, name }), type, code),
      ...likeEntries(entries).flatMap(blocksOf),
    ]);
    return onPages(blocks, room.height).map((page) => ({ page, title: chapterTitle(chapter, at) }));
  });
  const front = (leadsTo: LeadsTo): Block[][] => onPages(opening(book, type, leadsTo), room.height);
  // Where a link leads changes no line: the pages in front are counted before it is known.
  const inFront = front(() => undefined).length;
  const places = new Map<string, string>();
  chapters.forEach(({ page }, at) => {
    for (const anchor of anchorsOf(page)) places.set(anchor, nameOf(inFront + at));
  });
  const pages = [
    ...front((anchor) => places.get(anchor)).map((page) => ({ page, title: message("book.title") })),
    ...chapters,
  ];
  return pages.map(
    ({ page, title }, at): BookPage => ({
      scene: {
        id: nameOf(at),
        title,
        scale: 1,
        toScale: false,
        // As high as the paper leaves: no two pages share a sheet.
        bounds: { x: [0, room.width], y: [-room.height, 0] },
        items: pageItems(page),
      },
      holds: anchorsOf(page),
    }),
  );
}

function anchorsOf(page: readonly Block[]): string[] {
  return page.flatMap(({ anchor }) => (anchor === undefined ? [] : [anchor]));
}

function chapterTitle({ subject }: BookChapter, at: number): Message {
  return message("book.chapter", { number: at + 1, subject: message(`book.subject.${subject}`) });
}

function heading(text: SceneText, type: BookType, anchor?: string): Block {
  const look = { height: 3.5, above: 3, withNext: true as const, ...(anchor !== undefined && { anchor }) };
  return block([{ text, at: 0, width: type.width, weight: "bold" }], type, look);
}

function opening(book: Book, type: BookType, leadsTo: LeadsTo): Block[] {
  const { width } = type;
  const line = (text: SceneText): Block => block([{ text, at: 0, width }], type);
  return [
    block([{ text: book.title, at: 0, width, weight: "bold" }], type, { height: 5 }),
    line(message("book.of", { place: book.place, revision: book.revision ?? "–" })),
    block([{ text: message("drawing.caution.codes"), at: 0, width, weight: "bold" }], type),
    line(message("book.how-to-read")),
    line(message("book.bases")),
    ...contents(book.chapters, type, leadsTo),
    ...openLines("book.fails", book.fails, { type, leadsTo }),
    ...openLines("book.cannot-evaluate", book.cannotEvaluate, { type, leadsTo }),
    ...(book.cautions.length > 0 ? openLines("book.cautions", book.cautions, { type, leadsTo }) : []),
    ...provisionalLines(book.provisional, { type, leadsTo }),
  ];
}

const COUNT_WIDTH = 21;

/** How many of each outcome, a line a subject, which leads to its chapter. */
function contents(chapters: readonly BookChapter[], type: BookType, leadsTo: LeadsTo): Block[] {
  const { width } = type;
  const words = width - OUTCOMES.length * COUNT_WIDTH;
  const counts = (texts: readonly SceneText[]) =>
    texts.map((text, i) => ({
      text,
      at: words + i * COUNT_WIDTH + 1,
      width: COUNT_WIDTH - 1,
      end: true as const,
    }));
  return [
    heading(message("book.contents"), type),
    block(
      [
        { text: message("book.head.subject"), at: 0, width: words, ink: "second" },
        ...counts(OUTCOMES.map((outcome) => message("drawing.term", { word: outcome }))),
      ],
      type,
      { withNext: true },
    ),
    ...chapters.map((chapter, at) => {
      const link = chapter.rules[0] && leadsTo(chapter.rules[0].code);
      return block(
        [
          { text: chapterTitle(chapter, at), at: 0, width: words, ...(link !== undefined && { link }) },
          ...counts(OUTCOMES.map((outcome) => String(chapter.counts[outcome]))),
        ],
        type,
        { ruled: true },
      );
    }),
  ];
}

interface Lines {
  readonly type: BookType;
  readonly leadsTo: LeadsTo;
}

/** An entry a line, which leads to its working; who answers for it, where someone does. */
function openLines(title: string, entries: readonly BookEntry[], { type, leadsTo }: Lines): Block[] {
  const { width } = type;
  if (entries.length === 0)
    return [heading(message(title), type), block([{ text: message("book.none"), at: 0, width }], type)];
  return [
    heading(message(title), type),
    ...entries.flatMap(({ number, finding, place, waiver }) => {
      const link = leadsTo(number);
      const says = block(
        [
          { text: number, at: 0, width: 20, weight: "bold", ...(link !== undefined && { link }) },
          { text: outcomeOf(finding), at: 22, width: 26 },
          { text: place, at: 50, width: 40, ink: "second" },
          { text: finding.says, at: 92, width: width - 92 },
        ],
        type,
        { ruled: true, ...(waiver && { withNext: true as const }) },
      );
      const answered = waiver && message("book.waived", { ...waiver });
      return answered
        ? [says, block([{ text: answered, at: 92, width: width - 92, weight: "bold" }], type)]
        : [says];
    }),
  ];
}

/** Of the numbers of entries that one thing settles so many stand in a line. */
const NUMBERS_A_LINE = 5;
const NUMBER_WIDTH = 17;

/** What rests on typical or remembered values, by what would settle it. */
function provisionalLines(entries: readonly BookEntry[], { type, leadsTo }: Lines): Block[] {
  const { width } = type;
  const settled = new Map<string, { readonly by: Message; readonly numbers: string[] }>();
  for (const { number, unsettled } of entries) {
    for (const { by } of unsettled) {
      const group = settled.get(by.key) ?? { by, numbers: [] };
      settled.set(by.key, group);
      if (group.numbers.at(-1) !== number) group.numbers.push(number);
    }
  }
  if (settled.size === 0) return [];
  const words = width - NUMBERS_A_LINE * NUMBER_WIDTH - 2;
  return [
    heading(message("book.provisionals"), type),
    ...[...settled.values()].flatMap(({ by, numbers }) =>
      Array.from({ length: Math.ceil(numbers.length / NUMBERS_A_LINE) }, (_, row) =>
        block(
          [
            ...(row === 0 ? [{ text: by, at: 0, width: words }] : []),
            ...numbers.slice(row * NUMBERS_A_LINE, (row + 1) * NUMBERS_A_LINE).map((number, i) => {
              const link = leadsTo(number);
              return {
                text: number,
                at: words + 2 + i * NUMBER_WIDTH,
                width: NUMBER_WIDTH,
                ...(link !== undefined && { link }),
              };
            }),
          ],
          type,
          row === 0 ? { ruled: true } : {},
        ),
      ),
    ),
  ];
}
