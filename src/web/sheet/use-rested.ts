import { useEffect, useRef, useState } from "react";

/**
 * A value for what need not follow every frame: a change after a rest is taken at once, further ones not sooner than `ms`
 * after it, and the last one always.
 */
export function useRested<Value>(value: Value, ms: number): Value {
  const [rested, setRested] = useState(value);
  const taken = useRef(Number.NEGATIVE_INFINITY);
  useEffect(() => {
    const take = (): void => {
      taken.current = performance.now();
      setRested(value);
    };
    const wait = taken.current + ms - performance.now();
    if (wait <= 0) {
      take();
      return;
    }
    const timer = setTimeout(take, wait);
    return () => clearTimeout(timer);
  }, [value, ms]);
  return rested;
}
