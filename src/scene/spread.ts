/** Spreading of labels along a line: each as near as it can stand to what it names. */

/**
 * Places for labels that want to stand at `wanted` (any order) and need `spacing` between neighbours. Groups that would
 * touch are laid out evenly round the mean of their wishes, so the sum of squared moves is least. The result has the
 * order of `wanted`; equal wishes keep their order.
 */
export function spread(wanted: readonly number[], { spacing }: { spacing: number }): number[] {
  const order = wanted
    .map((_, i) => i)
    .sort((a, b) => (wanted[a] as number) - (wanted[b] as number) || a - b);
  const groups: { sum: number; members: number[] }[] = [];
  for (const i of order) {
    groups.push({ sum: wanted[i] as number, members: [i] });
    for (;;) {
      const last = groups.at(-1);
      const before = groups.at(-2);
      if (!last || !before) break;
      const end = middle(before) + ((before.members.length - 1) / 2) * spacing;
      const start = middle(last) - ((last.members.length - 1) / 2) * spacing;
      if (start - end >= spacing - 1e-9) break;
      before.sum += last.sum;
      before.members.push(...last.members);
      groups.pop();
    }
  }
  const places = new Array<number>(wanted.length).fill(0);
  for (const group of groups) {
    const first = middle(group) - ((group.members.length - 1) / 2) * spacing;
    group.members.forEach((member, k) => {
      places[member] = first + k * spacing;
    });
  }
  return places;
}

function middle(group: { sum: number; members: readonly number[] }): number {
  return group.sum / group.members.length;
}
