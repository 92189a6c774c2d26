/** The middle of several timings of a piece of work, in milliseconds. */
export async function median(
  work: () => unknown,
  { runs, warm }: { runs: number; warm: number },
): Promise<number> {
  for (let i = 0; i < warm; i++) await work();
  const times: number[] = [];
  for (let i = 0; i < runs; i++) {
    const from = performance.now();
    await work();
    times.push(performance.now() - from);
  }
  return middle(times);
}

export function middle(times: readonly number[]): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** A time with a unit that suits it. */
export function shown(ms: number): string {
  if (ms < 1) return `${(ms * 1000).toFixed(1)} µs`;
  return ms < 1000 ? `${ms.toFixed(2)} ms` : `${(ms / 1000).toFixed(2)} s`;
}

/** One line of the bench: what was measured, how long it took, what it should stay under. */
export function line(what: string, ms: number, within: number): void {
  const verdict = ms <= within ? 'within' : 'OVER';
  console.log(`${what.padEnd(44)} ${shown(ms).padStart(10)}   ${verdict} ${shown(within)}`);
}
