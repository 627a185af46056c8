/** Messages: a key of the catalogues with the values that its sentence needs. No room below `text` makes sentences. */

/** A value in a message: text as it stands, a number, or another message. */
export type MessageValue = string | number | Message | readonly MessageValue[];

export interface Message {
  readonly key: string;
  readonly values: Readonly<Record<string, MessageValue>>;
}

export function message(key: string, values: Readonly<Record<string, MessageValue>> = {}): Message {
  return { key, values };
}
