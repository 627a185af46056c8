/**
 * Bounds on the number of equal sheets from pieces too large to lie beside each other: L0 to L3 of Martello & Vigo, Management
 * Science 44 (1998) 388-399, L1 after Dell'Amico & Martello, ORSA J. Computing 7 (1995) 191-200. Formulas from memory. Pieces
 * lie as they are given; whole numbers.
 */

export interface LargeBox {
  readonly width: number;
  readonly height: number;
  readonly count: number;
}

interface Sides {
  readonly width: number;
  readonly height: number;
}

/** Sheets that the pieces take at least, by each of the four. */
export function largePieceBounds(
  boxes: readonly LargeBox[],
  sheet: Sides,
): { l0: number; l1: number; l2: number; l3: number } {
  const across = boxes.map(({ width, height, count }) => ({ width: height, height: width, count }));
  const lying = { width: sheet.height, height: sheet.width };
  const area = sum(boxes, ({ width, height, count }) => width * height * count);
  return {
    l0: atLeast(area / (sheet.width * sheet.height)),
    l1: Math.max(byWide(boxes, sheet), byWide(across, lying)),
    l2: Math.max(byArea(boxes, sheet), byArea(across, lying)),
    l3: byNumber(boxes, sheet),
  };
}

/** Pieces wider than half the sheet stand above one another: a bin packing of their heights. */
function byWide(boxes: readonly LargeBox[], sheet: Sides): number {
  const wide = boxes.filter(({ width }) => 2 * width > sheet.width);
  const high = wide.filter(({ height }) => 2 * height > sheet.height);
  const low = wide.filter(({ height }) => 2 * height <= sheet.height);
  const more = low.map(({ height: p }) => {
    const large = high.filter(({ height }) => height <= sheet.height - p);
    const small = low.filter(({ height }) => height >= p);
    const number = sum(small, ({ count }) => count);
    const heights = sum(small, ({ height, count }) => height * count);
    const room = sum(large, ({ height, count }) => (sheet.height - height) * count);
    const places = sum(large, ({ height, count }) => Math.floor((sheet.height - height) / p) * count);
    return Math.max(
      atLeast((heights - room) / sheet.height),
      atLeast((number - places) / Math.floor(sheet.height / p)),
    );
  });
  return sum(high, ({ count }) => count) + greatest(more);
}

/** The area of pieces that the sheets of the wide ones do not hold: beside the widest of those nothing lies. */
function byArea(boxes: readonly LargeBox[], sheet: Sides): number {
  const wide = byWide(boxes, sheet);
  const more = boxes
    .filter(({ width }) => 2 * width <= sheet.width)
    .map(({ width: q }) => {
      const widest = sum(boxes, ({ width, height, count }) => (width > sheet.width - q ? height * count : 0));
      const area = sum(boxes, ({ width, height, count }) =>
        width >= q && width <= sheet.width - q ? width * height * count : 0,
      );
      const held = (sheet.height * wide - widest) * sheet.width;
      return atLeast((area - held) / (sheet.width * sheet.height));
    });
  return wide + greatest(more);
}

/** How many pieces of at least p by q the sheets of those larger than half of it hold besides. */
function byNumber(boxes: readonly LargeBox[], sheet: Sides): number {
  const large = boxes.filter(({ width, height }) => 2 * width > sheet.width && 2 * height > sheet.height);
  const small = boxes.filter(({ width, height }) => 2 * width <= sheet.width && 2 * height <= sheet.height);
  const number = sum(large, ({ count }) => count);
  const highs = [...new Set(small.map(({ height }) => height))];
  const more = [...new Set(small.map(({ width }) => width))].flatMap((q) =>
    highs.map((p) => {
      const across = Math.floor(sheet.width / q);
      const up = Math.floor(sheet.height / p);
      const wanted = sum(small, ({ width, height, count }) => (width >= q && height >= p ? count : 0));
      const places = sum(large, ({ width, height, count }) => {
        if (width > sheet.width - q && height > sheet.height - p) return 0;
        const beside = Math.floor((sheet.width - width) / q);
        const above = Math.floor((sheet.height - height) / p);
        return (up * beside + across * above - beside * above) * count;
      });
      return atLeast((wanted - places) / (across * up));
    }),
  );
  return number + greatest(more);
}

function sum<Item>(items: readonly Item[], value: (item: Item) => number): number {
  return items.reduce((total, item) => total + value(item), 0);
}

function greatest(values: readonly number[]): number {
  return values.reduce((most, value) => Math.max(most, value), 0);
}

/** Rounded up, but for what division leaves. */
function atLeast(value: number): number {
  return Math.ceil(value - 1e-9);
}
