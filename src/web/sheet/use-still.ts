import { useEffect, useRef, useState } from "react";

export interface Stillness {
  /** A value that stays for so long is taken, milliseconds. */
  readonly rest: number;
  /** Of values that keep changing one is taken at least so often, milliseconds. */
  readonly atMost: number;
}

/**
 * A value for what is dear to draw: taken when it rests, and now and then while it keeps changing.
 * @param of what the value is of; of another thing it is taken at once
 */
export function useStill<Value>(value: Value, of: unknown, { rest, atMost }: Stillness): Value {
  const [taken, setTaken] = useState({ value, of });
  const since = useRef(performance.now());
  useEffect(() => {
    const take = (): void => {
      since.current = performance.now();
      setTaken((before) => (before.value === value && before.of === of ? before : { value, of }));
    };
    const wait = Math.min(rest, since.current + atMost - performance.now());
    const timer = setTimeout(take, Math.max(0, wait));
    return () => clearTimeout(timer);
  }, [value, of, rest, atMost]);
  return taken.of === of ? taken.value : value;
}
