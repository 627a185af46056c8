/** Words for the reader at hand. */
import { createContext, useContext } from "react";
import { type Message, type MessageValue, message } from "../text/message.ts";
import { ENGLISH_MM, type Reader, say } from "../text/say.ts";

export const ReaderContext = createContext<Reader>(ENGLISH_MM);

export interface Words {
  readonly reader: Reader;
  /** The text of a key. */
  w(key: string, values?: Readonly<Record<string, MessageValue>>): string;
  /** The sentence of a message; a name stays as it is. */
  s(text: Message | string): string;
}

export function wordsFor(reader: Reader): Words {
  return {
    reader,
    w: (key, values) => say(message(key, values), reader),
    s: (text) => (typeof text === "string" ? text : say(text, reader)),
  };
}

export function useWords(): Words {
  return wordsFor(useContext(ReaderContext));
}
