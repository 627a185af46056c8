/** Hands out the least of what it holds, by an order of its own. */
export class Queue<T> {
  readonly #heap: T[] = [];
  readonly #isBefore: (one: T, other: T) => boolean;

  constructor(isBefore: (one: T, other: T) => boolean) {
    this.#isBefore = isBefore;
  }

  push(entry: T): void {
    const heap = this.#heap;
    let place = heap.length;
    heap.push(entry);
    while (place > 0) {
      const parent = (place - 1) >> 1;
      const above = heap[parent];
      if (above === undefined || !this.#isBefore(entry, above)) break;
      heap[place] = above;
      place = parent;
    }
    heap[place] = entry;
  }

  pop(): T | undefined {
    const heap = this.#heap;
    const least = heap[0];
    const last = heap.pop();
    if (last === undefined || heap.length === 0) return least;
    let place = 0;
    for (;;) {
      let child = 2 * place + 1;
      let below = heap[child];
      const beside = heap[child + 1];
      if (below !== undefined && beside !== undefined && this.#isBefore(beside, below)) {
        child += 1;
        below = beside;
      }
      if (below === undefined || !this.#isBefore(below, last)) break;
      heap[place] = below;
      place = child;
    }
    heap[place] = last;
    return least;
  }
}
